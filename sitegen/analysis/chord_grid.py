"""A chart's chords on a grid of whole ticks, which are faster to compare than fractions."""

from bisect import bisect_right
from collections.abc import Iterable
from fractions import Fraction
from functools import cached_property, lru_cache
from math import lcm

from sitegen.analysis.reading import NoteReading
from sitegen.score.chart import Chart
from sitegen.score.chord import Chord, NoChord
from sitegen.score.meter import Meter
from sitegen.score.metrical_weight import metrical_weight

_OPEN_THIRDS = (3, 4)
_THIRD_OR_FOURTH = {"3", "♭3", "4"}


class ChordGrid:
    """A chart's time in ticks: its chord changes, the weight of its places, its cuts.

    A chord row that repeats a symbol is no change. `cuts` are the starts of bars that are not
    played after the bar written before them: what follows a closed ending.
    """

    def __init__(self, chart: Chart, notes: Iterable[NoteReading]) -> None:
        """Lay the grid that holds every onset of the chart."""
        times = {event.onset.denominator for event in chart.chords}
        for bar in chart.bars:
            times |= {t.denominator for t in (bar.start, bar.length, bar.skipped)}
        for note in notes:
            times.add(note.onset.denominator)
            times.add(note.duration.denominator)
        self.scale = lcm(*times)
        self.chart = chart
        self.chords: list[Chord | NoChord] = []
        self.changes: list[int] = []
        for event in chart.chords:
            if not self.chords or event.chord != self.chords[-1]:
                self.chords.append(event.chord)
                self.changes.append(self.ticks(event.onset))
        self.cuts = {
            self.ticks(bar.end) for bar in chart.bars if bar.ending_closes and bar.repeat_end
        }
        self._bars = [self.ticks(bar.start) for bar in chart.bars]

    @cached_property
    def stable_classes(self) -> list[frozenset[int] | None]:
        """The pitch classes that need no resolution, for each chord; None for N.C."""
        return [_stable_classes(chord) for chord in self.chords]

    def ticks(self, time: Fraction) -> int:
        """Return a time in ticks."""
        return time.numerator * (self.scale // time.denominator)

    def time(self, tick: int) -> Fraction:
        """Return a tick in quarter notes."""
        return Fraction(tick, self.scale)

    def weight(self, tick: int) -> int:
        """Return the metrical weight of a tick."""
        place = self._bar_at(tick)
        bar = self.chart.bars[place]
        return _weight(bar.meter, tick - self._bars[place] + self.ticks(bar.skipped), self.scale)

    def beat(self, tick: int) -> Fraction:
        """Return the length in quarter notes of the felt beat at a tick."""
        meter = self.chart.bars[self._bar_at(tick)].meter
        return meter.beat * 3 if meter.is_compound else meter.beat

    def chord_at(self, tick: int, chord: int = -1) -> int:
        """Return the place in `chords` of what sounds at a tick, looking on from `chord`.

        It is -1 before the first chord.
        """
        while chord + 1 < len(self.changes) and self.changes[chord + 1] <= tick:
            chord += 1
        return chord

    def until(self, end: int, chord: int) -> int:
        """Return where a note that lasts until `end` stops sounding over a chord."""
        after = chord + 1
        return min(end, self.changes[after]) if after < len(self.changes) else end

    def _bar_at(self, tick: int) -> int:
        return max(bisect_right(self._bars, tick) - 1, 0)


@lru_cache(maxsize=4096)
def _weight(meter: Meter, offset: int, scale: int) -> int:
    """Return a metrical weight by ticks, which are faster to look up than a fraction."""
    return metrical_weight(meter, Fraction(offset, scale))


def _stable_classes(chord: Chord | NoChord) -> frozenset[int] | None:
    """Return the pitch classes that need no resolution over a chord, None over N.C.

    They are its members and bass, and either third where the symbol leaves the third open: a
    third sung over a power chord fills the chord and is no non-chord tone in any handbook.
    """
    if isinstance(chord, NoChord):
        return None
    is_open = not _THIRD_OR_FOURTH & set(chord.degrees)
    thirds = _OPEN_THIRDS if is_open else ()
    root = chord.root.pitch_class
    return frozenset((*chord.pitch_classes, *((root + third) % 12 for third in thirds)))
