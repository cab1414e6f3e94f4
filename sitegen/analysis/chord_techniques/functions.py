"""The chords of a chart, each with what it is in the key."""

from dataclasses import dataclass

from sitegen.analysis.reading import ChartReading
from sitegen.analysis.roots.chord_line import HeldChord, changes_of, find_passages
from sitegen.harmony import ChordFunction, function_line
from sitegen.score.chord import Chord
from sitegen.score.key import Key


@dataclass(frozen=True, slots=True)
class KeyedChord:
    """A chord of a chart that has a key, with what it is there."""

    held: HeldChord
    function: ChordFunction

    @property
    def chord(self) -> Chord:
        """The chord itself."""
        return self.held.chord


@dataclass(frozen=True, slots=True)
class KeyedLine:
    """All changes of chord of a chart in its key, in order of time."""

    key: Key
    chords: tuple[KeyedChord, ...]


def find_changes(reading: ChartReading) -> list[HeldChord]:
    """Return every change of chord of a chart once."""
    return changes_of(find_passages(reading))


def in_key(reading: ChartReading, changes: list[HeldChord]) -> KeyedLine | None:
    """Return the changes of chord with what each is in the key; None for a chart without one."""
    key = reading.chart.key
    if key is None:
        return None
    line = function_line([symbol.chord for symbol in reading.chords], key)
    pairs = ((held, line[held.number]) for held in changes)
    return KeyedLine(key, tuple(KeyedChord(held, found) for held, found in pairs if found))
