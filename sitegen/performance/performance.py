"""A chart as it is heard: players, bars in the order of play, and the strokes of each player.

Times are `Fraction`s of a quarter note from the start, as played: repeats written out, swing
already in the onsets. Seconds come last: quarters / `quarters_per_minute` * 60.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Sound = Literal["voice", "guitar", "bass", "keys", "drums", "reed", "chords"]
Manner = Literal[
    "", "dead", "ghost", "harmonic", "palm mute", "let ring", "roll", "flam", "joined"
]


@dataclass(frozen=True)
class Stroke:
    """One note as it is struck.

    `midi` is the number that sounds (General MIDI percussion for drums) and `loudness` goes
    from 0 to 1. `glide` is the number that the pitch moves to while it sounds, by a bend or a
    slide, None where it stays. A "joined" note is reached without a new stroke, by a hammer-on,
    a pull-off or a slide. `id` names the written note, "" for a chord that is only
    written as a symbol.
    """

    start: Fraction
    length: Fraction
    midi: int
    loudness: float
    id: str = ""
    manner: Manner = ""
    glide: int | None = None


@dataclass(frozen=True)
class Player:
    """A part as it is heard; `at_first` says whether it sounds before anybody chooses."""

    name: str
    sound: Sound
    strokes: tuple[Stroke, ...]
    at_first: bool = True


@dataclass(frozen=True)
class PlayedBar:
    """One bar in the order of play; `clicks` are the onsets of its felt beats."""

    number: int
    start: Fraction
    length: Fraction
    clicks: tuple[Fraction, ...]


@dataclass(frozen=True)
class Performance:
    """A chart as it is played; `tempo_is_given` is False where its tempo is only a usual one."""

    players: tuple[Player, ...]
    bars: tuple[PlayedBar, ...]
    quarters_per_minute: Fraction
    tempo_is_given: bool

    @property
    def length(self) -> Fraction:
        """The length in quarter notes."""
        return self.bars[-1].start + self.bars[-1].length if self.bars else Fraction(0)
