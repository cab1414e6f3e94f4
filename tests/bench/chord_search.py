"""How well and how fast the browser finds progressions.

Excerpts of published pieces (`published_progressions`) are transposed by lot and asked for as a
reader types them, in the theme's own scripts in a Chromium; then once more with one chord changed
for another. A piece is found first when none is ranked above it; one that holds the same chords in
as good a way is tied with it, and a plain search in Python says how many really hold them.

Run it with `python tests/bench/chord_search.py`; it takes some minutes, most of them for reading
the collections. Times are of this machine; the floor beside them is a bare pass over all chords.
"""

import argparse
import gzip
import json
import shutil
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench.archive_harmony import choose_key, choose_progression  # noqa: E402 - after the path
from bench.moved_chords import NAMES, moved  # noqa: E402 - as above
from bench.published_progressions import Source, entries_of, published_progressions  # noqa: E402
from browser.modules import run, served_scripts  # noqa: E402 - as above
from playwright.sync_api import Page, sync_playwright  # noqa: E402 - as above
from unit.finding.slow_chords import slow_costs, slow_search  # noqa: E402 - as above

from sitegen.finding import ChartEntry, ChordStep, Entry  # noqa: E402 - as above
from sitegen.finding.chord_readings import readings_file  # noqa: E402 - as above
from sitegen.finding.chords import as_searched  # noqa: E402 - as above
from sitegen.finding.chords_index import chords_file  # noqa: E402 - as above
from sitegen.harmony import read_chord  # noqa: E402 - as above
from sitegen.harmony.progressions import core, make_progression  # noqa: E402 - as above
from sitegen.score.chord import Chord  # noqa: E402 - as above

EXCERPTS, WRITE_UPS, CHARTS = 300, 5000, 6
_SHORTEST, _LONGEST = 4, 8
_FIRST_ONES, _LONG = 3, 6
_WORST = 1000
_CHANGES = "C Cm C7 Cmaj7 Cm7 Cdim".split()

ASK = """async (folder, file, readings, questions) => {
  const { read, readingsWith } = await import(folder + "/chord-reading.js");
  const { answer } = await import(folder + "/chord-answer.js");
  const { decode } = await import(folder + "/chord-index.js");
  const index = decode(file);
  const known = readingsWith(readings, index.chords);
  return questions.map((text) => {
    const asked = read(text, known);
    const from = performance.now();
    const { found, near } = answer(index, asked, {});
    const took = performance.now() - from;
    const ranks = found.map(({ row, way }) => [index.writeUps[row], way]);
    for (const { row, cost } of near) ranks.push([index.writeUps[row], 6 + cost]);
    return [asked.unread, ranks, took];
  });
}"""
SCAN = """async (folder, file, times) => {
  const { decode } = await import(folder + "/chord-index.js");
  const from = performance.now();
  const { roots, signs } = decode(file).full;
  const decoded = performance.now() - from;
  const took = [];
  for (let sum = 0; took.length < times; ) {
    const from = performance.now();
    for (let step = 0; step < roots.length; step++) sum += roots[step] + signs[step];
    took.push(performance.now() - from + 0 * sum);
  }
  return [decoded, took];
}"""


@dataclass(frozen=True)
class Excerpt:
    """Some chords of a piece, moved, as typed; `piece` counts the sources from 0."""

    piece: int
    text: str


@dataclass(frozen=True)
class Rank:
    """Where a piece was found: the pieces that are ranked strictly above it, and those as good.

    `found` is False where it is not among the results at all; then all of them are above.
    """

    found: bool
    above: tuple[int, ...]
    equals: tuple[int, ...] = ()

    def is_among(self, most: int) -> bool:
        """Return whether it is among the first so many, or as good as one of them."""
        return self.found and len(self.above) < most

    def is_tied(self, most: int) -> bool:
        """Return whether only the order of the archive says if it is among the first so many."""
        return self.is_among(most) and len(self.above) + len(self.equals) >= most


def draw_excerpts(sources: Sequence[Source], count: int, seed: int) -> list[Excerpt]:
    """Return excerpts of four to eight chords, each moved by lot."""
    lot = Random(seed)  # noqa: S311 - drawn to measure
    excerpts = []
    for _ in range(count):
        piece = lot.randrange(len(sources))
        steps = sources[piece].progression.steps
        length = lot.randint(_SHORTEST, _LONGEST)
        start, semitones = lot.randrange(len(steps) - length + 1), lot.randrange(12)
        excerpts.append(Excerpt(piece, _typed(steps[start : start + length], semitones)))
    return excerpts


def change_one(excerpt: Excerpt, lot: Random) -> Excerpt:
    """Return an excerpt with another chord, on another root, in the place of one of its own."""
    typed = excerpt.text.split()
    place = lot.randrange(len(typed))
    near = {_root(symbol) for symbol in typed[max(place - 1, 0) : place + 2]}
    root = lot.choice([name for n, name in enumerate(NAMES) if n not in near])
    typed[place] = root + lot.choice(_CHANGES)[1:]
    return Excerpt(excerpt.piece, " ".join(typed))


def find_ranks(
    page: Page, folder: str, sources: Sequence[Source], excerpts: Sequence[Excerpt]
) -> list[Rank]:
    """Return where the browser finds the piece of each excerpt."""
    answers = _ask(page, folder, entries_of(sources), [excerpt.text for excerpt in excerpts])
    ranks = []
    for excerpt, (unread, found, _) in zip(excerpts, answers, strict=True):
        if unread:
            message = f"not read: {unread}"
            raise ValueError(message)
        own = next((score for piece, score in found if piece == excerpt.piece), _WORST)
        others = [(piece, score) for piece, score in found if piece != excerpt.piece]
        above = tuple(piece for piece, score in others if score < own)
        equals = tuple(piece for piece, score in others if score == own)
        ranks.append(Rank(own < _WORST, above, equals))
    return ranks


def _ask(page: Page, folder: str, entries: Sequence[Entry], texts: Sequence[str]) -> list[Any]:
    file, readings = json.loads(chords_file(entries)), json.loads(readings_file())
    return list(run(page, ASK, folder, file, readings, list(texts)))


def _typed(steps: Sequence[ChordStep], semitones: int) -> str:
    return " ".join(moved(step.symbol, semitones) for step in steps)


@cache
def _root(symbol: str) -> int:
    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    return chord.root.pitch_class


def draw_archive(write_ups: int, seed: int) -> list[Entry]:
    """Return write-ups with six charts of eight bars each."""
    lot = Random(seed)  # noqa: S311 - drawn to measure
    return [Entry(tuple(_chart(lot) for _ in range(CHARTS))) for _ in range(write_ups)]


def _chart(lot: Random) -> ChartEntry:
    key = choose_key(lot)
    chords = [read_chord(chord.symbol) for chord in choose_progression(key, 8, lot)]
    progression = as_searched(make_progression(chords, key))
    return ChartEntry("chart-1", "Example 1", "", "changes", progression=progression)


def main(arguments: list[str]) -> int:
    """Print counts, sizes and times; nothing is asserted."""
    parser = argparse.ArgumentParser(description="Measure the search for progressions.")
    parser.add_argument("--excerpts", type=int, default=EXCERPTS)
    parser.add_argument("--write-ups", type=int, default=WRITE_UPS)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    with served_scripts() as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        page = browser.new_page()
        page.goto(address)
        _print_times(page, draw_archive(asked.write_ups, asked.seed), asked.seed)
        _print_ranks(page, published_progressions(), asked.excerpts, asked.seed)
        browser.close()
    return 0


def _print_ranks(page: Page, sources: Sequence[Source], count: int, seed: int) -> None:
    chords = sum(len(source.progression.steps) for source in sources)
    print(f"{len(sources)} pieces, {chords} chords; {count} excerpts")
    entries = entries_of(sources)
    excerpts = draw_excerpts(sources, count, seed)
    ranks = find_ranks(page, "", sources, excerpts)
    tied = [(e, r) for e, r in zip(excerpts, ranks, strict=True) if r.is_tied(1)]
    real = sum(are_as_good(entries, excerpt, rank.equals) for excerpt, rank in tied)
    print(f"as they are: first {sum(rank.is_among(1) for rank in ranks)} of {count}")
    print(f"  {len(tied)} tied; other pieces really hold the same in {real} of these {len(tied)}")
    lot = Random(seed)  # noqa: S311 - drawn to measure
    changed = [change_one(excerpt, lot) for excerpt in excerpts]
    ranks = find_ranks(page, "", sources, changed)
    missed = [(e, r) for e, r in zip(changed, ranks, strict=True) if not r.is_among(_FIRST_ONES)]
    real = sum(are_nearer(entries, excerpt, rank.above) for excerpt, rank in missed)
    print(f"one chord changed: among the first three {count - len(missed)} of {count}")
    print(f"  {sum(rank.is_tied(_FIRST_ONES) for rank in ranks)} of them tied with the third")
    print(f"  three pieces really are nearer in {real} of the other {len(missed)}")
    longer = [rank for e, rank in zip(changed, ranks, strict=True) if len(e.text.split()) >= _LONG]
    right = sum(rank.is_among(_FIRST_ONES) for rank in longer)
    print(f"  with {_LONG} chords or more: {right} of {len(longer)}")


def are_as_good(entries: Sequence[Entry], excerpt: Excerpt, others: Sequence[int]) -> bool:
    """Return whether a plain search says that others hold an excerpt as well as its own piece."""
    found = slow_search([entries[piece] for piece in (excerpt.piece, *others)], _chords(excerpt))
    return len(found) == len(others) + 1 and len({one.way for one in found}) == 1


def are_nearer(entries: Sequence[Entry], excerpt: Excerpt, others: Sequence[int]) -> bool:
    """Return whether a plain search says that others hold an excerpt, or come nearer than its own.

    Where the piece is not found at all, they may come as near.
    """
    asked = _chords(excerpt)
    some = [entries[piece] for piece in (excerpt.piece, *others)]
    holding = {one.write_up for one in slow_search(some, asked)}
    costs = slow_costs(some, asked)
    own = costs.get((0, 0), _WORST)
    return 0 not in holding and all(
        place in holding or costs.get((place, 0), _WORST) <= own for place in range(1, len(some))
    )


def _chords(excerpt: Excerpt) -> list[tuple[int, str, str]]:
    found = [core(read_chord(symbol)) for symbol in excerpt.text.split()]  # type: ignore[arg-type]
    return [(one.root, one.notes, one.family) for one in found]


def _print_times(page: Page, entries: Sequence[Entry], seed: int) -> None:
    file, table = chords_file(entries), readings_file()
    print(f"{CHARTS * len(entries)} progressions")
    print(f"index {len(gzip.compress(file))} bytes gzipped, readings {len(gzip.compress(table))}")
    sources = [
        Source("", one.progression) for entry in entries for one in entry.charts if one.progression
    ]
    long = [one for one in sources if len(one.progression.steps) >= _LONGEST]
    excerpts = draw_excerpts(long, 60, seed)
    lot = Random(seed)  # noqa: S311 - drawn to measure
    changed = [change_one(change_one(excerpt, lot), lot) for excerpt in excerpts]
    decoded, floor = run(page, SCAN, "", json.loads(file), 60)
    print(f"index made ready once: {decoded:.0f} ms; bare pass over it: {_say(floor)}")
    for what, asked in (("chords of a chart", excerpts), ("two chords changed", changed)):
        answers = _ask(page, "", entries, [excerpt.text for excerpt in asked])
        print(f"{what:<20} {_say([took for *_, took in answers])} a query")


def _say(times: Sequence[float]) -> str:
    ordered = sorted(times)
    middle, nearly_all = ordered[len(ordered) // 2], ordered[int(0.95 * (len(ordered) - 1))]
    return f"{middle:.1f} ms, 95 of 100 under {nearly_all:.1f} ms"


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
