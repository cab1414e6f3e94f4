"""The browser finds the tunes and beats that a plain search finds, and reads them as typed."""

import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from random import Random

import pytest
from browser.modules import module_page, run, scripts_of
from playwright.sync_api import Browser, Page
from unit.finding.drawn import METERS, draw_entries
from unit.finding.slow_tunes import lines_of, slow_beats, slow_contours, slow_tunes

from sitegen.finding import Entry
from sitegen.finding.beats_index import beats_file
from sitegen.finding.tunes_index import KINDS, tune_files

Site = tuple[str, list[str]]
QUERIES = 200
TUNES = """async (folder, files, questions) => {
  const { decode } = await import(folder + "/tune-index.js");
  const { search, searchContour } = await import(folder + "/tune-search.js");
  const tunes = decode(files);
  return questions.map((asked) => {
    const found = Array.isArray(asked) ? searchContour(tunes, asked) : search(tunes, asked);
    return found.map(({ row, way, shift, from }) =>
      [tunes.writeUps[row], tunes.charts[row], tunes.parts[row], way, shift, from]);
  });
}"""
BEATS = """async (folder, file, questions) => {
  const { decode, search } = await import(folder + "/beat-search.js");
  const charts = decode(file);
  return questions.map((asked) => search(charts, { ...asked, fastest: asked.fastest ?? Infinity })
    .map(({ chart, distance }) => [chart.writeUp, chart.chart, distance]));
}"""
READ = """async (folder, texts) => {
  const { read } = await import(folder + "/tune-reading.js");
  return texts.map(read);
}"""
RHYTHM = """async (folder, cases) => {
  const { hasRhythm } = await import(folder + "/tune-search.js");
  return cases.map(([gaps, played]) =>
    hasRhythm(gaps, 0, played));
}"""


@pytest.fixture(scope="module")
def page(browser: Browser, site: Site) -> Iterator[Page]:
    page = module_page(browser, site[0])
    yield page
    page.close()


@pytest.fixture(scope="module")
def folder(published: Path) -> str:
    return scripts_of(published)


def tunes_of(entries: Sequence[Entry]) -> list[object]:
    files = tune_files(entries)
    return [json.loads(files[f"tunes-{kind}.json"]) for kind in KINDS]


def test_the_browser_finds_the_tunes_that_a_plain_search_finds(page: Page, folder: str) -> None:
    lot = Random(20261127)  # noqa: S311 - drawn for a test
    entries = draw_entries(2, 16)
    lines = [line for _, _, line in lines_of(entries)]
    questions = []
    for _ in range(QUERIES):
        line = lot.choice([line for line in lines if len(line.midi) > 8])
        count = lot.choice([3, 4, 5, 6, 7, 8])
        start = lot.randrange(len(line.midi) - count + 1)
        notes = [pitch + 3 for pitch in line.midi[start : start + count]]
        change = lot.randrange(5)
        if change == 1:
            notes[lot.randrange(count)] += 1
        elif change == 2 and count > 4:
            del notes[lot.randrange(1, count - 1)]
        elif change == 3:
            notes.insert(lot.randrange(1, count), lot.choice(notes) + 1)
        octaves = lot.random() < 0.5
        degrees = not octaves and lot.random() < 0.4
        asked = notes if octaves else [note % 12 for note in notes]
        questions.append({"notes": asked, "octaves": octaves, "degrees": degrees})
    answers = run(page, TUNES, folder, tunes_of(entries), questions)
    ways = set()
    for asked_, found in zip(questions, answers, strict=True):
        told = slow_tunes(entries, **asked_)  # type: ignore[arg-type]
        assert [tuple(one) for one in found] == told
        ways |= {one[3] for one in told}
    assert ways == {0, 1, 2, 3}


def test_contours_are_found_sign_for_sign(page: Page, folder: str) -> None:
    lot = Random(3)  # noqa: S311 - drawn for a test
    entries = draw_entries(4, 50)
    questions = [
        [lot.choice([1, 1, -1, -1, 0]) for _ in range(lot.choice([3, 4, 6]))]
        for _ in range(QUERIES)
    ]
    answers = run(page, TUNES, folder, tunes_of(entries), questions)
    for signs, found in zip(questions, answers, strict=True):
        told = [(write_up, chart, part, place) for write_up, chart, part, *_, place in found]
        assert told == slow_contours(entries, signs)
    assert any(answers)


def test_the_browser_finds_the_beats_that_a_plain_search_finds(page: Page, folder: str) -> None:
    lot = Random(5)  # noqa: S311 - drawn for a test
    entries = draw_entries(6, 60)
    beats = [beat for entry in entries for chart in entry.charts for beat in chart.beats]
    questions = []
    for _ in range(QUERIES):
        beat = lot.choice(beats)
        drums = dict(lot.sample(beat.hits, lot.randint(0, len(beat.hits))))
        hits = {drum: list(ticks) for drum, ticks in drums.items()}
        if hits and lot.random() < 0.5:
            drum = lot.choice(list(hits))
            hits[drum] = sorted({*hits[drum], lot.randrange(0, METERS[beat.meter], 12)})
        bounds = lot.choice([(0, None), (80, 110), (0, 100), (100, None)])
        feel = lot.choice(["", "", "swing"])
        questions.append(
            {
                "meter": beat.meter,
                "hits": hits,
                "slowest": bounds[0],
                "fastest": bounds[1],
                "feel": feel,
            }
        )
    answers = run(page, BEATS, folder, json.loads(beats_file(entries)), questions)
    distances = set()
    for asked, found in zip(questions, answers, strict=True):
        fastest = float("inf") if asked["fastest"] is None else asked["fastest"]
        tempos = (asked["slowest"], fastest)
        told = slow_beats(entries, asked["meter"], asked["hits"], tempos, asked["feel"])  # type: ignore[arg-type]
        assert [tuple(one) for one in found] == told
        distances |= {one[2] for one in told}
    assert {0, 1} <= distances


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("C4 Eb4 G4", {"question": {"notes": [60, 63, 67], "octaves": True, "degrees": False}}),
        ("c E♭ g#", {"question": {"notes": [0, 3, 8], "octaves": False, "degrees": False}}),
        ("5 6 1 b3", {"question": {"notes": [7, 9, 0, 3], "octaves": False, "degrees": True}}),
        ("up down same", {"signs": [1, -1, 0]}),
        ("uuds", {"signs": [1, 1, -1, 0]}),
        ("+ - =", {"signs": [1, -1, 0]}),
        ("C4 H4", {"unread": "H4"}),
        ("1 9", {"unread": "1"}),
    ],
)
def test_notes_degrees_and_contours_are_read(
    page: Page, folder: str, text: str, read: object
) -> None:
    assert run(page, READ, folder, [text]) == [read]


def test_a_rhythm_is_the_same_at_any_speed_and_a_little_uneven(page: Page, folder: str) -> None:
    cases = [
        ([24, 24, 12, 12], [500, 510, 240, 260]),
        ([24, 24, 12, 12], [1000, 980, 510, 500]),
        ([24, 24, 12, 12], [500, 500, 500, 500]),
        ([24, 12, 24], [250, 500, 250]),
    ]
    assert run(page, RHYTHM, folder, cases) == [True, True, False, False]
