"""Look tunes up by pieces of themselves: Bach's sopranos and Ryan's Mammoth Collection.

Run it with `python tests/bench/tune_search.py [--excerpts 300] [--seed 1]`. The lines of music21's
corpus are filed as a test archive. Excerpts of seven to twelve notes are drawn, transposed, and
looked up by the theme's own search in Chromium; then once more with one note changed. It prints
how often the piece comes first, or among the first three, how often it stands behind others that
have the notes just as well, so that nobody could tell, and how often behind others that have them
better, which a plain search in Python confirms. It also prints the size of the index, and
what one question costs beside a floor, one pass over all notes of the index in the same page.
"""

import argparse
import gzip
import json
import sys
from collections.abc import Sequence
from pathlib import Path
from random import Random
from shutil import which
from typing import Any

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench.corpora import Piece, bach_chorales, ryans_mammoth  # noqa: E402 - after the path is set
from browser.serving import served  # noqa: E402 - as above
from playwright.sync_api import sync_playwright  # noqa: E402 - as above
from unit.finding.slow_tunes import slow_tunes  # noqa: E402 - as above

from sitegen.finding import ChartEntry, Entry, Melody  # noqa: E402 - as above
from sitegen.finding.entry import TICKS  # noqa: E402 - as above
from sitegen.finding.tunes_index import KINDS, tune_files  # noqa: E402 - as above

SCRIPTS = ROOT / "themes" / "liner" / "scripts"
FEWEST, MOST, LONGEST = 7, 12, 400
NO_WAY = 4
SEARCH = """async ([files, questions]) => {
  const { decode } = await import("/tune-index.js");
  const { search } = await import("/tune-search.js");
  const tunes = decode(JSON.parse(files));
  let sum = 0;
  const began = performance.now();
  for (let n = 0; n < 20; n++) for (const pitch of tunes.midi) sum += pitch;
  const floor = (performance.now() - began) / 20;
  const times = [];
  const places = questions.map(([notes, writeUp]) => {
    const asked = performance.now();
    const found = search(tunes, { notes, octaves: true, degrees: false });
    times.push(performance.now() - asked);
    const place = found.findIndex(({ row }) => row === writeUp);
    const own = found[place]?.way ?? Infinity;
    return [place, found.filter(({ way }) => way < own).map(({ row }) => row)];
  });
  times.sort((one, other) => one - other);
  return { places, floor, middle: times[times.length >> 1], most: times.at(-1), sum };
}"""


def main(arguments: list[str]) -> int:
    """Print the counts, the size and the times."""
    parser = argparse.ArgumentParser(description=__doc__, allow_abbrev=False)
    parser.add_argument("--excerpts", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    lines = [line for piece in (*bach_chorales(), *ryans_mammoth()) if (line := top_line(piece))]
    files = tune_files([entry_of(line) for line in lines])
    data = b"[%s]" % b",".join(files[f"tunes-{kind}.json"] for kind in KINDS)
    notes = sum(len(line) for line in lines)
    print(
        f"{len(lines)} lines, {notes} notes; index {len(gzip.compress(data, 9))} bytes compressed"
    )
    lot = Random(asked.seed)  # noqa: S311 - drawn for a bench
    plain = [draw(lines, lot, changed=False) for _ in range(asked.excerpts)]
    changed = [draw(lines, lot, changed=True) for _ in range(asked.excerpts)]
    for what, questions, most in (("as they are", plain, 1), ("one note changed", changed, 3)):
        found = look_up(data.decode(), questions)
        places = found["places"]
        first = sum(0 <= place < most for place, _ in places)
        tied = sum(place >= most and len(nearer) < most for place, nearer in places)
        print(f"{what:<18} among the first {most}: {first} of {len(places)}", end="")
        print(f", behind others that have the notes in as good a way: {tied}")
        lost = [n for n, (place, nearer) in enumerate(places) if len(nearer) >= most or place < 0]
        real = sum(are_nearer(lines, questions[n], places[n][1]) for n in lost)
        print(
            f"{'':<18} behind {most} or more that have them in a better way: {len(lost)}", end=""
        )
        print(f"; a plain search says so of {real}")
        ratio = found["middle"] / found["floor"]
        print(
            f"{'':<18} {found['middle']:.1f} ms, at most {found['most']:.1f}; {ratio:.1f} floors"
        )
    return 0


def top_line(piece: Piece) -> list[tuple[int, int]]:
    """Return onset in ticks and MIDI number of the highest notes, one after the other."""
    highest: dict[int, int] = {}
    for (pitch, _), onset in zip(piece.notes, piece.onsets, strict=True):
        tick = round(onset * TICKS)
        highest[tick] = max(pitch.midi, highest.get(tick, 0))
    return sorted(highest.items())[:LONGEST]


def entry_of(line: Sequence[tuple[int, int]]) -> Entry:
    """Return a write-up with one line."""
    onsets, midi = zip(*line, strict=True)
    bars = tuple(1 + onset // (4 * TICKS) for onset in onsets)
    melody = Melody("voice", midi, onsets, bars)
    return Entry((ChartEntry("a", "Example 1", "", "notation", melodies=(melody,)),))


def draw(
    lines: Sequence[Sequence[tuple[int, int]]], lot: Random, *, changed: bool
) -> tuple[list[int], int]:
    """Return some notes of a line, transposed, and the line's number."""
    number = lot.choice([n for n, line in enumerate(lines) if len(line) > MOST])
    count = lot.randint(FEWEST, MOST)
    start = lot.randrange(len(lines[number]) - count)
    shift = lot.randint(-6, 6)
    notes = [pitch + shift for _, pitch in lines[number][start : start + count]]
    if changed:
        notes[lot.randrange(count)] += lot.choice([-2, -1, 1, 2])
    return notes, number


def are_nearer(
    lines: Sequence[Sequence[tuple[int, int]]], question: tuple[list[int], int], others: list[int]
) -> bool:
    """Return whether a plain search finds the notes in other lines in a better way."""
    notes, own = question
    found = slow_tunes(
        [entry_of(lines[n]) for n in (own, *others)], notes, octaves=True, degrees=False
    )
    ways = {write_up: way for write_up, _, _, way, *_ in found}
    return all(ways[n] < ways.get(0, NO_WAY) for n in range(1, len(others) + 1))


def look_up(index: str, questions: Sequence[tuple[list[int], int]]) -> dict[str, Any]:
    """Return what the theme's search finds in Chromium."""
    with served(SCRIPTS) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=which("chromium"), args=["--no-sandbox"]
        )
        page = browser.new_page()
        page.goto(f"{address}tune-search.js")
        found = page.evaluate(SEARCH, [index, json.loads(json.dumps(questions))])
        browser.close()
    return dict(found)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
