"""Damage score files of every kind and show bars of them: failures, hangs, faults without a place.

Run it with `python tests/bench/damaged_scores.py [--count 500] [--seed 1] [--jobs 2]`. Each file
is a good one, of our own or of music21's corpus, with some bytes changed, cut out or doubled;
compressed ones are damaged before they are packed, after it, or both. What can be read is analysed
and engraved, all of it or some bars. It prints how many were shown, how many were refused with a
fault at the line that names them, and the counts that should be 0. A score takes about a second,
which music21 needs to start.
"""

import argparse
import sys
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from functools import cache
from pathlib import Path
from random import Random
from typing import Any, NamedTuple

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from unit.kinds.files import FilesBeside  # noqa: E402 - after the path is set
from unit.scores.files import packed  # noqa: E402 - as above
from unit.scores.test_scores import ABC, KRN, XML  # noqa: E402 - as above

from sitegen.charts.defaults import SongDefaults  # noqa: E402 - as above
from sitegen.kinds.excerpt import EXCERPT, LANTERN  # noqa: E402 - as above
from sitegen.kinds.kind import Surroundings  # noqa: E402 - as above
from sitegen.scores.reading import PATIENCE  # noqa: E402 - as above
from sitegen.scores.safety import unpack  # noqa: E402 - as above
from sitegen.source import Passage  # noqa: E402 - as above

_MOST_CHANGES = 3
_LONGEST_CUT = 40


class Outcome(NamedTuple):
    """What came of one damaged file."""

    number: int
    suffix: str
    word: str
    trouble: str = ""


def main(arguments: list[str]) -> int:
    """Print the counts."""
    parser = argparse.ArgumentParser(description=__doc__, allow_abbrev=False)
    parser.add_argument("--count", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=2)
    asked = parser.parse_args(arguments)
    counts: Counter[str] = Counter()
    with ProcessPoolExecutor(asked.jobs) as pool:
        tasks = [(number, asked.seed) for number in range(asked.count)]
        for outcome in pool.map(try_one, tasks):
            counts[outcome.word] += 1
            if outcome.trouble:
                print(f"  {outcome.number} {outcome.suffix}: {outcome.trouble}", flush=True)
    for word in ("shown", "refused", "traceback", "hang", "fault without a line"):
        print(f"{word:<24} {counts[word]:>5} of {asked.count}")
    return 0


def try_one(task: tuple[int, int]) -> Outcome:
    """Damage a file and show it as an author would."""
    number, seed = task
    lot = Random(f"{seed} {number}")  # noqa: S311 - drawn for a bench
    suffix, data = draw_file(lot)
    bars = lot.choice(["", "bars: 1\n", "bars: 2-3\n", "bars: 1-6\n"])
    began = time.monotonic()
    beside = FilesBeside({f"score{suffix}": data})
    passage = Passage.of(f"id: a\nfile: score{suffix}\n{bars}")
    try:
        reading = EXCERPT.read(passage, SongDefaults(beside=beside))
        if reading.chart is not None:
            around = Surroundings("a", "Example 1", source=passage.source)
            EXCERPT.draw(EXCERPT.analyse(reading.chart, around), around)
    except Exception as wrong:  # noqa: BLE001 - it is what is counted
        return Outcome(number, suffix, "traceback", f"{type(wrong).__name__}: {wrong}")
    if time.monotonic() - began > PATIENCE + 5:
        return Outcome(number, suffix, "hang", f"{time.monotonic() - began:.0f} s")
    lines = range(1, len(passage.lines) + 1)
    if any(fault.span.line not in lines for fault in reading.diagnostics):
        return Outcome(number, suffix, "fault without a line", str(reading.diagnostics))
    if reading.chart is None and not reading.diagnostics:
        return Outcome(number, suffix, "fault without a line", "nothing is said")
    return Outcome(number, suffix, "refused" if reading.chart is None else "shown")


def draw_file(lot: Random) -> tuple[str, bytes]:
    """Return the end of a file's name and its damaged contents."""
    suffix = lot.choice([".musicxml", ".mxl", ".abc", ".krn", ".mid"])
    good = lot.choice(good_files()[suffix])
    if suffix != ".mxl":
        return suffix, damaged(good, lot)
    inner = damaged(good, lot) if lot.random() < 2 / 3 else good
    made = packed({"score.xml": inner})
    return suffix, damaged(made, lot) if lot.random() < 1 / 2 else made


@cache
def good_files() -> dict[str, list[bytes]]:
    """Return some good files by the end of their names; those of `.mxl` are not packed yet."""
    xml = [
        XML.encode(),
        *map(unpack, _corpus("bach/bwv66.6.mxl", "leadSheet/fosterBrownHair.mxl")),
    ]
    plain = ["demos/two-voices.xml", "demos/multiple-verses.xml", "demos/two-parts.xml"]
    jigs = ["ryansMammoth/BanishMisfortune.abc", "ryansMammoth/BluffReel.abc"]
    masses = ["palestrina/Agnus_I_27.krn", "palestrina/Gloria_56_b.krn"]
    return {
        ".musicxml": [*xml, *_corpus(*plain)],
        ".mxl": [*xml, *_corpus(*plain)],
        ".abc": [ABC.encode(), LANTERN.encode(), *_corpus(*jigs)],
        ".krn": [KRN.encode(), *_corpus(*masses)],
        ".mid": [MIDI, _midi("bach/bwv66.6.mxl")],
    }


def _corpus(*names: str) -> list[bytes]:
    import music21  # noqa: PLC0415 - takes a second, once in each process

    folder = Path(music21.__file__).parent / "corpus"
    return [(folder / name).read_bytes() for name in names]


def _midi(name: str) -> bytes:
    from music21 import corpus, midi  # noqa: PLC0415 - as above

    score: Any = corpus.parse(name)
    made: bytes = midi.translate.streamToMidiFile(score).writestr()
    return made


def damaged(data: bytes, lot: Random) -> bytes:
    """Return some data with bytes changed, cut out, put in or doubled."""
    made = bytearray(data)
    for _ in range(lot.randint(1, _MOST_CHANGES)):
        at = lot.randrange(len(made) + 1)
        end = min(at + lot.randint(1, _LONGEST_CUT), len(made))
        match lot.randrange(4):
            case 0 if at < len(made):
                made[at] = lot.randrange(256)
            case 1:
                del made[at:end]
            case 2:
                made[at:at] = bytes(lot.choice(b"0123456789<>|:/[]^_=\x00\xff") for _ in range(3))
            case _:
                made[at:at] = made[at:end]
    return bytes(made)


# A format 0 file by hand: C4 and E4, a quarter each at 96 ticks (Standard MIDI Files 1.0).
MIDI = (
    b"MThd\x00\x00\x00\x06\x00\x00\x00\x01\x00\x60MTrk\x00\x00\x00\x15"
    b"\x00\x90\x3c\x40\x60\x80\x3c\x00\x00\x90\x40\x40\x60\x80\x40\x00\x00\xff\x2f\x00\x00"
)

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
