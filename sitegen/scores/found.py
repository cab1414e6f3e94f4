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
    marks: tuple[str, ...] = ()


class FoundPart(Struct, frozen=True):
    """One voice of a part, whose events do not overlap: a part with several gives several.

    No two parts of a score have one name, whatever their capitals.
    """

    name: str
    events: tuple[FoundEvent, ...]


class FoundBar(Struct, frozen=True):
    """A bar with its number, where it starts, what it really holds, and the meter it is in.

    `skipped` is the time of the meter that passes before it starts; `ending` is the text of a
    bracket that starts here, `ending_closes` says that one closes here.
    """

    number: int
    start: str
    length: str
    meter: str
    skipped: str = "0"
    repeat_start: bool = False
    repeat_end: bool = False
    double_bar: bool = False
    ending: str = ""
    ending_closes: bool = False


class FoundText(Struct, frozen=True):
    """A text and where it stands: a chord symbol, a rehearsal mark."""

    onset: str
    text: str


class FoundKey(Struct, frozen=True):
    """A key from `onset` on: its signature, sharps positive, and `name` where its mode is told."""

    onset: str
    fifths: int
    name: str = ""


class FoundTempo(Struct, frozen=True):
    """A tempo from `onset` on, in beats a minute of `beat` quarter notes."""

    onset: str
    beats: float
    beat: str


class FoundLoss(Struct, frozen=True):
    """What a chart cannot hold, in words, and where; without onsets it may be anywhere."""

    what: str
    onsets: tuple[str, ...] = ()


class FoundScore(Struct, frozen=True):
    """A score; `is_spelled` is False where the file has numbers of keys and no names of notes."""

    bars: tuple[FoundBar, ...]
    parts: tuple[FoundPart, ...]
    chords: tuple[FoundText, ...] = ()
    sections: tuple[FoundText, ...] = ()
    keys: tuple[FoundKey, ...] = ()
    tempos: tuple[FoundTempo, ...] = ()
    losses: tuple[FoundLoss, ...] = ()
    is_spelled: bool = True
