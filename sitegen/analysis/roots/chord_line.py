"""The chord row as a line of chords that change, in passages that are heard without a break."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from sitegen.analysis.reading import ChartReading, Place
from sitegen.score.chart import Chart
from sitegen.score.chord import Chord

# A quarter note in ticks: every tuplet of up to 16 notes, and 1024th notes, are whole numbers.
# Others are rounded down, which keeps their order.
TICKS = 64 * 720720
_EIGHTH = TICKS // 2


def ticks(time: Fraction) -> int:
    """Return a time in quarter notes as a whole number, for fast comparison."""
    return time.numerator * TICKS // time.denominator


class HeldChord(NamedTuple):
    """One chord for as long as it stays the same, however often the row repeats it.

    `number` is the place of its first symbol among the chart's chord readings; `onset` and `end`
    are in ticks. `bar_line` is where the bar of its onset ends, None for a chord on the first
    beat. `root` and `bass` are pitch classes, `tones` has the bit of every member's pitch class.
    `after_silence` says that an N.C. parts it from the chord before.
    """

    chord: Chord
    number: int
    place: Place
    onset: int
    end: int
    bar_line: int | None
    root: int
    bass: int
    tones: int
    after_silence: bool

    @property
    def is_pushed(self) -> bool:
        """True for a chord that comes an eighth or less ahead of a bar line and lasts over it."""
        line = self.bar_line
        return line is not None and self.end > line and line - self.onset <= _EIGHTH

    @property
    def home(self) -> int:
        """The bar that the chord is meant for: the one after the line where it is pushed."""
        return self.place.bar + self.is_pushed

    @property
    def home_onset(self) -> int:
        """Where the chord would stand if it were not pushed."""
        return self.bar_line if self.bar_line is not None and self.is_pushed else self.onset

    def holds(self, pitch_class: int) -> bool:
        """Tell whether a pitch class is a member of the chord; a foreign bass is none."""
        return bool(self.tones >> pitch_class & 1)


Passage = tuple[HeldChord, ...]
"""Chords that follow each other when the chart is played."""


def find_passages(reading: ChartReading) -> tuple[Passage, ...]:
    """Return the chord row cut where the order on paper is no order of play; N.C. is left out.

    Repeats are not written out. A second ending does not follow the first: a passage ends before
    it, and the next one starts with the chord that stands before the endings.
    """
    passages: list[Passage] = []
    onsets = [ticks(symbol.onset) for symbol in reading.chords]
    seams = list(_seams(reading.chart))
    cuts = [bisect_left(onsets, seam) for seam, _ in seams]
    forks = [0, *(fork for _, fork in seams)]
    onsets.append(ticks(reading.chart.length))
    lines = [*(ticks(bar.start) for bar in reading.chart.bars), onsets[-1]]
    for first, last, fork in zip([0, *cuts], [*cuts, len(onsets) - 1], forks, strict=True):
        earlier = (held for line in reversed(passages) for held in reversed(line))
        before = next((held for held in earlier if held.onset < fork), None)
        line = tuple(_hold(reading, range(first, last), onsets, lines, before))
        if line:
            passages.append(line)
    return tuple(passages)


def changes_of(passages: Sequence[Passage]) -> list[HeldChord]:
    """Return every chord of the passages once, in order of time."""
    held: dict[int, HeldChord] = {}
    for passage in passages:
        for each in passage:
            held.setdefault(each.number, each)
    return list(held.values())


def by_root(passage: Sequence[HeldChord]) -> list[HeldChord]:
    """Return the chords of a passage at which the root changes, the first among them."""
    kept: list[HeldChord] = []
    for held in passage:
        if not kept or held.root != kept[-1].root:
            kept.append(held)
    return kept


def _seams(chart: Chart) -> Iterator[tuple[int, int]]:
    """Yield where each further ending starts, and where the first one of its group does."""
    fork: int | None = None
    is_open = False
    for bar in chart.bars:
        if bar.ending and fork is not None:
            yield ticks(bar.start), fork
        elif bar.ending:
            fork = ticks(bar.start)
        elif not is_open:
            fork = None
        is_open = (is_open or bool(bar.ending)) and not bar.ending_closes


def _hold(
    reading: ChartReading,
    indices: range,
    onsets: Sequence[int],
    lines: Sequence[int],
    before: HeldChord | None,
) -> Iterator[HeldChord]:
    """Yield the chords of some readings, equal neighbours as one, after the one `before`.

    `onsets` are those of all readings and `lines` all bar lines, both with the end of the chart.
    """
    held, is_silent = before, False
    for index in indices:
        chord = reading.chords[index].chord
        if not isinstance(chord, Chord):
            is_silent = True
        elif held is not None and not is_silent and held.chord == chord:
            held = held._replace(end=onsets[index + 1])
        else:
            if held is not None:
                yield held
            times = onsets[index], onsets[index + 1], _line_after(onsets[index], lines)
            held, is_silent = _held(reading, index, chord, times, after_silence=is_silent), False
    if held is not None and held is not before:
        yield held


def _line_after(onset: int, lines: Sequence[int]) -> int | None:
    """Return the bar line that ends the bar of an onset; None for one on the first beat."""
    at = bisect_left(lines, onset)
    return None if at == len(lines) or lines[at] == onset else lines[at]


def _held(
    reading: ChartReading,
    index: int,
    chord: Chord,
    times: tuple[int, int, int | None],
    *,
    after_silence: bool,
) -> HeldChord:
    symbol = reading.chords[index]
    tones = 0
    for name in chord.members:
        tones |= 1 << name.pitch_class
    root = chord.root.pitch_class
    bass = root if chord.bass is chord.root else chord.bass.pitch_class
    place = Place(symbol.bar, symbol.beat)
    return HeldChord(chord, index, place, *times, root, bass, tones, after_silence)
