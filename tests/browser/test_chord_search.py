"""The browser finds the progressions that a plain search finds, and reads chords alike."""

import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from random import Random
from typing import Any

import pytest
from bench.chord_search import are_as_good, are_nearer, change_one, draw_excerpts, find_ranks
from bench.published_progressions import analysed, entries_of
from browser.modules import module_page, run, scripts_of
from playwright.sync_api import Browser, Page
from unit.finding.drawn import CHORDS, draw_entries, step
from unit.finding.slow_chords import Chord, chords_of, slow_costs, slow_search

from sitegen.finding import ChartEntry, ChordStep, Entry, Progression
from sitegen.finding.chord_readings import readings_file
from sitegen.finding.chords_index import chords_file
from sitegen.harmony import read_chord, roman
from sitegen.harmony.figures import seventh_in_bass
from sitegen.harmony.progressions import core
from sitegen.harmony.qualities import QUALITIES, SPELLINGS
from sitegen.score.chord import Chord as Symbol
from sitegen.score.key import Key

Site = tuple[str, list[str]]
QUERIES = 200
READINGS = json.loads(readings_file())
READ = """async (folder, readings, texts) => {
  const { read } = await import(folder + "/chord-reading.js");
  return texts.map((text) => {
    const { chords, numerals, unread } = read(text, readings);
    const told = chords.map(({ root, notes, family }) => [root, notes, family]);
    return unread ? unread : [numerals, told];
  });
}"""
READ_WITH = """
  const { readingsWith } = await import(folder + "/chord-reading.js");
  const readings = readingsWith(known, file.chords);
"""
SEARCH = """async (folder, file, questions) => {
  const { decode } = await import(folder + "/chord-index.js");
  const { search } = await import(folder + "/chord-search.js");
  const { nearest } = await import(folder + "/chord-nearness.js");
  const index = decode(file);
  return questions.map(([asked, how]) => {
    const chords = asked.map(([root, notes, family]) => ({ root, notes, family }));
    const named = (row) => [index.writeUps[row], index.charts[row]];
    const own = ({ row, steps }) => steps.map((step) => step - index.full.firsts[row]);
    return [
      search(index, chords, how).map((one) => [...named(one.row), one.way, one.shift, own(one)]),
      nearest(index, chords, how).map((one) => [...named(one.row), one.cost]),
    ];
  });
}"""
UNPACK = """async (folder, file) => {
  const { barsOf, decode, symbolOf } = await import(folder + "/chord-index.js");
  const index = decode(file);
  const rows = [];
  for (let row = 0; row < index.count; row++) {
    const first = index.full.firsts[row];
    const count = index.full.firsts[row + 1] - first;
    const steps = Array.from({ length: count }, (_, n) => first + n);
    const told = steps.map((step) => [symbolOf(index, step), barsOf(index, [step])]);
    rows.push([index.writeUps[row], index.charts[row], index.tonics[row], told]);
  }
  return rows;
}"""


@pytest.fixture(scope="module")
def page(browser: Browser, site: Site) -> Iterator[Page]:
    page = module_page(browser, site[0])
    yield page
    page.close()


@pytest.fixture(scope="module")
def folder(published: Path) -> str:
    return scripts_of(published)


def read(page: Page, folder: str, texts: Sequence[str]) -> list[Any]:
    return list(run(page, READ, folder, READINGS, list(texts)))


def as_asked(symbol: str) -> list[object]:
    chord = read_chord(symbol)
    assert isinstance(chord, Symbol)
    found = core(chord)
    return [found.root, found.notes, found.family]


MODIFIED = """
add9 madd9 7b9 7#9 7#11 7b5 7#5 7b13 7b9b13 7#9#5 maj7#11 maj9#11 m7b5 m7#5 m7add11 9#11 13b9 13#11
(b5) (#5) (add9) m(add9) 7(b9) 7(#9) maj7(#11) no3 no5 7no5 7no3 mno5 9no5 sus2sus4 m11b5 mb6 6add9
""".split()
ROOTS = ["C", "Db", "D♯", "F#", "B♭", "E", "G", "Ab"]


BASSES = ["C", "Eb", "F♯", "Bb"]


def test_symbols_are_read_as_everywhere_in_this_project(page: Page, folder: str) -> None:
    suffixes = [*SPELLINGS, *(quality.name for quality in QUALITIES), *MODIFIED]
    symbols = [f"{root}{suffix}" for root in ROOTS for suffix in suffixes]
    symbols += [
        f"{root}{suffix}/{bass}" for root in ROOTS[:4] for suffix in suffixes for bass in BASSES
    ]
    symbols = [symbol for symbol in symbols if " " not in symbol]
    assert len(symbols) > 10_000
    found = read(page, folder, symbols)
    wrong = [
        (symbol, one)
        for symbol, one in zip(symbols, found, strict=True)
        if one != [False, [as_asked(symbol)]]
    ]
    assert wrong[:5] == []


@pytest.mark.parametrize("tonic", ["C major", "C minor"])
def test_numerals_are_read_as_they_are_written(page: Page, folder: str, tonic: str) -> None:
    key = Key.read(tonic)
    roots = ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"]
    symbols = [
        f"{root}{quality.name}{slash}"
        for root in roots
        for quality in QUALITIES
        for slash in ("", "/C", "/G", "/B", "/Eb", "/F#")
    ]
    texts = [roman(symbol, key) for symbol in symbols]
    found = read(page, folder, texts)
    wrong = [
        (symbol, text, one)
        for symbol, text, one in zip(symbols, texts, found, strict=True)
        if one != [True, [as_written(symbol)]]
    ]
    assert wrong[:5] == []


def as_written(symbol: str) -> list[object]:
    """Return a chord as numerals have it: C/Bb is a seventh chord in third inversion."""
    chord = read_chord(symbol)
    assert isinstance(chord, Symbol)
    found = core(seventh_in_bass(chord))
    return [found.root, found.notes, found.family]


def test_numerals_may_be_written_like_symbols(page: Page, folder: str) -> None:
    pairs = [
        ("iim7", "Dm7"),
        ("viidim7", "Bdim7"),
        ("V7b9", "G7b9"),
        ("♭VIM7", "Abmaj7"),
        ("V7/V", "D7"),
    ]
    found = read(page, folder, [numeral for numeral, _ in pairs])
    assert found == [[True, [as_asked(symbol)]] for _, symbol in pairs]


def test_what_stands_in_the_archive_can_be_asked_for(page: Page, folder: str) -> None:
    rare = "Dmaj7sus2#5"
    assert read(page, folder, [rare]) == [rare]
    entry = ChartEntry(
        "c", "", "", "", progression=Progression((step("C", 1, 1), step(rare, 2, 2)))
    )
    code = READ.replace("readings, texts", "known, texts, file").replace(
        "return texts", READ_WITH + "return texts"
    )
    file = json.loads(chords_file([Entry((entry,))]))
    found = run(page, code, folder, READINGS, ["F" + rare[1:] + "/A"], file)
    assert found == [[False, [as_asked("F" + rare[1:] + "/A")]]]


@pytest.mark.parametrize(
    ("text", "count"),
    [("Em C G D", 4), ("Em – C – G – D", 4), ("Em, C, G", 3), ("| Em | % | C |", 2), ("i bVI", 2)],
)
def test_chords_may_be_set_apart_as_people_do(
    page: Page, folder: str, text: str, count: int
) -> None:
    ((_, chords),) = read(page, folder, [text])
    assert len(chords) == count


def test_what_cannot_be_read_is_named(page: Page, folder: str) -> None:
    assert read(page, folder, ["Em Hx G", "vi IV Q", "Cblurb"]) == ["Hx", "Q", "Cblurb"]


def draw_question(lot: Random, entries: Sequence[Entry]) -> tuple[list[Chord], dict[str, bool]]:
    """Return some chords of a chart, moved and changed now and then, and how they are asked."""
    numerals = lot.random() < 0.3
    if lot.random() < 0.2:
        steps = tuple(step(lot.choice(CHORDS), 1, 1) for _ in range(lot.choice([2, 3, 4])))
        chords, tonic = chords_of(Progression(steps)), 0
    else:
        found: Progression | None = None
        while found is None:
            chart = lot.choice(lot.choice(entries).charts)
            found = chart.progression
        count = lot.choice([2, 3, 4, 4, 5, len(found.steps), found.loop_length or 4])
        start = lot.randrange(len(found.steps))
        chords = chords_of(found)[start : start + count]
        tonic = max(found.tonic, 0)
    shift = -tonic if numerals else lot.choice([0, lot.randrange(12)])
    chords = [((root + shift) % 12, notes, family) for root, notes, family in chords]
    kept = [chord for n, chord in enumerate(chords) if not n or chord[:2] != chords[n - 1][:2]]
    how = {name: lot.random() < 0.3 for name in ("sameKey", "exact", "loop")}
    return kept, {**how, "numerals": numerals}


def test_the_browser_finds_what_a_plain_search_finds(page: Page, folder: str) -> None:
    lot = Random(20261127)  # noqa: S311 - drawn for a test
    entries = draw_entries(1, 60)
    questions: list[tuple[list[Chord], dict[str, bool]]] = []
    while len(questions) < QUERIES:
        asked, how = draw_question(lot, entries)
        if len(asked) > 1:
            questions.append((asked, how))
    answers = run(page, SEARCH, folder, json.loads(chords_file(entries)), questions)
    ways = set()
    for (asked, how), (found, near) in zip(questions, answers, strict=True):
        told = [
            [one.write_up, one.chart, one.way, one.shift, list(one.steps)]
            for one in slow_search(
                entries,
                asked,
                numerals=how["numerals"],
                same_key=how["sameKey"],
                exact=how["exact"],
                loop=how["loop"],
            )
        ]
        assert found == told
        ways |= {one[2] for one in told}
        if not how["sameKey"]:
            costs = slow_costs(entries, asked, numerals=how["numerals"])
            assert [cost for *_, cost in near] == sorted(costs.values())[: len(near)]
            assert len(near) == min(len(costs), 24)
            assert all(costs[write_up, chart] == cost for write_up, chart, cost in near)
    assert ways == {0, 1, 2, 3, 4, 5}


def test_the_index_keeps_symbols_and_bars(page: Page, folder: str) -> None:
    steps = (
        step("C", 0, 1),
        step("G/B", 90, 200, shift=1),
        step("F#m7b5/A", 3, 3),
        step("Bbsus4", 3, 5),
        step("E7b9", 5, 2),
    )
    charts = [(0, 0, steps, -1), (0, 2, steps[1:], 6), (70, 1, steps[:2], 11)]
    entries = [Entry() for _ in range(71)]
    for write_up, chart, own, tonic in charts:
        empty = [ChartEntry(f"c{n}", "", "", "") for n in range(3)]
        known = list(entries[write_up].charts or empty)
        known[chart] = ChartEntry("c", "", "", "", progression=Progression(own, tonic))
        entries[write_up] = Entry(tuple(known))
    found = run(page, UNPACK, folder, json.loads(chords_file(entries)))
    assert found == [
        [write_up, chart, tonic, [[one.symbol, _bars(one)] for one in own]]
        for write_up, chart, own, tonic in charts
    ]


def _bars(one: ChordStep) -> list[int]:
    if one.last_bar < one.bar:
        return [one.last_bar, one.bar]
    return list(range(one.bar, one.last_bar + 1))


def test_excerpts_find_their_pieces(page: Page, folder: str) -> None:
    sources = list(analysed("bach/choraleAnalyses", 8))
    excerpts = draw_excerpts(sources, 40, 1)
    ranks = find_ranks(page, folder, sources, excerpts)
    assert all(rank.is_among(1) for rank in ranks)
    entries = entries_of(sources)
    for excerpt, rank in zip(excerpts, ranks, strict=True):
        assert are_as_good(entries, excerpt, rank.equals)
    lot = Random(1)  # noqa: S311 - drawn for a test
    changed = [change_one(excerpt, lot) for excerpt in excerpts]
    for excerpt, rank in zip(changed, find_ranks(page, folder, sources, changed), strict=True):
        assert rank.is_among(3) or are_nearer(entries, excerpt, rank.above)
