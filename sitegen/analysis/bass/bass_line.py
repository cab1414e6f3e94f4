"""The bass under the chords: as the symbols write it, and as a part plays it."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from sitegen.analysis.reading import ChartReading, NoteReading, Place
from sitegen.analysis.roots.chord_line import TICKS, HeldChord, Passage, ticks
from sitegen.score.chart import Part
from sitegen.score.pitch import PitchName

_EIGHTH = TICKS // 2


class BassTone(NamedTuple):
    """The bass at one change of chord.

    `midi` is None where only a symbol names it; `sound` is the pitch class.
    """

    name: PitchName
    sound: int
    midi: int | None
    held: HeldChord
    place: Place


@dataclass(frozen=True, slots=True)
class BassLine:
    """The bass of a chart, one tone a chord, in stretches that are heard without a break.

    `part` is empty for the basses of the chord symbols.
    """

    part: str
    stretches: tuple[tuple[BassTone, ...], ...]

    @property
    def prefix(self) -> str:
        """What the paths of its facts begin with."""
        return f"{self.part.replace(' ', '-')}." if self.part else ""

    @property
    def speaker(self) -> str:
        """What its sentences put behind the bars: ", bass" for a part."""
        return f", {self.part}" if self.part else ""


def written_line(passages: Sequence[Passage]) -> BassLine:
    """Return the basses of the symbols: the note after the slash, the root without one."""
    stretches = tuple(
        tuple(BassTone(held.chord.bass, held.bass, None, held, held.place) for held in passage)
        for passage in passages
    )
    return BassLine("", stretches)


def played_lines(reading: ChartReading, passages: Sequence[Passage]) -> Iterator[BassLine]:
    """Yield the line of every bass part that plays at two changes of chord or more."""
    for part in reading.chart.parts:
        if is_bass(part):
            line = BassLine(part.name, tuple(_played(reading, part, passages)))
            if any(len(stretch) > 1 for stretch in line.stretches):
                yield line


def is_bass(part: Part) -> bool:
    """Tell whether a part plays the bass: by its instrument's family, or by its name."""
    named = "bass" in part.name.lower().split()
    return not part.is_drums and (part.instrument.family == "bass" or named)


def by_bass(stretch: Sequence[BassTone]) -> list[BassTone]:
    """Return the tones at which the bass moves, the first among them."""
    kept: list[BassTone] = []
    for tone in stretch:
        if not kept or (kept[-1].sound, kept[-1].midi) != (tone.sound, tone.midi):
            kept.append(tone)
    return kept


class _Low(NamedTuple):
    """The lowest note of an onset, its times in ticks."""

    onset: int
    end: int
    midi: int
    reading: NoteReading


def _played(
    reading: ChartReading, part: Part, passages: Sequence[Passage]
) -> Iterator[tuple[BassTone, ...]]:
    """Yield the tones of a part under the chords; a chord without one ends a stretch."""
    lows = _lowest(note for note in reading.notes if note.part == part.name)
    onsets = [low.onset for low in lows]
    for passage in passages:
        tones: list[BassTone] = []
        for held in passage:
            tone = _tone(held, _under(held, lows, onsets))
            if tone is not None:
                tones.append(tone)
            elif tones:
                yield tuple(tones)
                tones = []
        if tones:
            yield tuple(tones)


def _tone(held: HeldChord, low: _Low | None) -> BassTone | None:
    pitch = low.reading.note.pitch if low else None
    if low is None or pitch is None:
        return None
    return BassTone(pitch.name, low.midi % 12, low.midi, held, place_of(low.reading))


def place_of(note: NoteReading) -> Place:
    """Return where a note stands, with its name in the engraving."""
    return Place(note.bar, note.beat, (note.id,) if note.id else ())


def _lowest(notes: Iterator[NoteReading]) -> list[_Low]:
    """Return the lowest pitched note of every onset, in order of time."""
    lowest: dict[int, _Low] = {}
    for note in notes:
        midi = note.note.midi
        if note.note.pitch is None or midi is None:
            continue
        onset = ticks(note.onset)
        if onset not in lowest or lowest[onset].midi > midi:
            lowest[onset] = _Low(onset, onset + ticks(note.duration), midi, note)
    return [lowest[onset] for onset in sorted(lowest)]


def _under(held: HeldChord, lows: Sequence[_Low], onsets: Sequence[int]) -> _Low | None:
    """Return the bass note of a chord, None where the part rests all through it.

    It is the note that sounds when the chord starts, or the first one that starts under it. A
    player may be late: a note of the chord within an eighth takes the place of one that is held
    over from before and is none.
    """
    at = bisect_right(onsets, held.onset)
    sounding = lows[at - 1] if at and lows[at - 1].end > held.onset else None
    following = lows[at] if at < len(lows) and onsets[at] < held.end else None
    if sounding is None:
        return following
    if sounding.onset == held.onset or following is None:
        return sounding
    is_late = following.onset - held.onset <= _EIGHTH
    takes_place = _is_in(following, held) and not _is_in(sounding, held)
    return following if is_late and takes_place else sounding


def _is_in(low: _Low, held: HeldChord) -> bool:
    return held.holds(low.midi % 12) or low.midi % 12 == held.bass
