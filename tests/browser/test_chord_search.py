"""The browser finds the progressions that a plain search finds, and reads chords alike."""

import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from random import Random
from typing import Any

import pytest
from browser.modules import module_page, run, scripts_of
from playwright.sync_api import Browser, Page
from unit.finding.drawn import CHORDS, draw_entries, step
from unit.finding.slow_chords import Chord, chords_of, slow_costs, slow_search

from sitegen.finding import Entry, Progression
from sitegen.finding.chord_readings import readings_file
from sitegen.finding.chords_index import chords_file
from sitegen.harmony import read_chord, roman
from sitegen.harmony.progressions import core
from sitegen.harmony.qualities import QUALITIES
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
SEARCH = """async (folder, file, questions) => {
  const { decode, search } = await import(folder + "/chord-search.js");
  const { nearest } = await import(folder + "/chord-nearness.js");
  const { symbols, rows } = decode(file);
  return questions.map(([asked, how]) => {
    const chords = asked.map(([root, notes, family]) => ({ root, notes, family }));
    const found = search(rows, chords, how);
    const near = nearest(rows, symbols, chords, how);
    return [
      found.map(({ row, way, shift, steps }) => [row.writeUp, row.chart, way, shift, steps]),
      near.map(({ row, cost }) => [row.writeUp, row.chart, cost]),
    ];
  });
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


ROOTS = ["C", "Db", "D♯", "F#", "B♭", "E", "G", "Ab"]


def test_symbols_are_read_as_everywhere_in_this_project(page: Page, folder: str) -> None:
    symbols = [
        f"{root}{quality.name}{slash}"
        for root in ROOTS
        for quality in QUALITIES
        for slash in ("", "/F", "/Bb")
    ]
    assert len(symbols) > 1000
    found = read(page, folder, symbols)
    wrong = [
        (symbol, one)
        for symbol, one in zip(symbols, found, strict=True)
        if one != [False, [as_asked(symbol)]]
    ]
    assert wrong == []


def test_numerals_are_read_as_they_are_written(page: Page, folder: str) -> None:
    key = Key.read("C major")
    symbols = [
        f"{root}{quality.name}{bass}"
        for root in ("C", "D", "Eb", "E", "F", "G", "A", "Bb", "B")
        for quality in QUALITIES
        for bass in ("",)
    ]
    texts = [roman(symbol, key) for symbol in symbols]
    found = read(page, folder, texts)
    wrong = [
        (symbol, text, one)
        for symbol, text, one in zip(symbols, texts, found, strict=True)
        if one != [True, [as_asked(symbol)]]
    ]
    assert wrong == []


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
    assert read(page, folder, ["Em Hx G", "vi IV Q", "Cblurb"]) == ["Hx", "vi", "Cblurb"]


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
