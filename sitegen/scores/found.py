"""What is found in a score file, as plain values: this is what travels between the processes.

Times are in quarter notes, written as exact text ("1/2"), from the start of the score.
"""

from msgspec import Struct


class FoundLyric(Struct, frozen=True):
    """A syllable below a note: `joined` says that the word goes on."""

    text: str
    verse: int
    joined: bool = False


class FoundEvent(Struct, frozen=True):
    """Notes that start together in one voice, by their sounding pitches ("Bb3")."""

    onset: str
    duration: str
    pitches: tuple[str, ...]
    lyrics: tuple[FoundLyric, ...] = ()


class FoundPart(Struct, frozen=True):
    """One voice of a part: a part with several gives several."""

    name: str
    events: tuple[FoundEvent, ...]


class FoundBar(Struct, frozen=True):
    """A bar with its number, where it starts, what it really holds, and the meter it is in."""

    number: int
    start: str
    length: str
    meter: str
    repeat_start: bool = False
    repeat_end: bool = False


class FoundChord(Struct, frozen=True):
    """A chord symbol and where it stands."""

    onset: str
    symbol: str


class FoundScore(Struct, frozen=True):
    """A score: `fifths` and `mode` of its first key, `tempo` in beats of `beat` quarters.

    `left_out` says in words what the file has and a chart cannot show.
    """

    bars: tuple[FoundBar, ...]
    parts: tuple[FoundPart, ...]
    chords: tuple[FoundChord, ...] = ()
    tonic: str = ""
    mode: str = ""
    tempo: float = 0
    beat: str = "1"
    left_out: tuple[str, ...] = ()
