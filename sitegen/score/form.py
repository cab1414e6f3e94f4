"""The form of a song: its sections in order, counted in bars and placed in the recording."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo
from sitegen.source import Span


@dataclass(frozen=True)
class ChartMention:
    """A chart that a section names: its id and the word it stands under (`changes`, `see`)."""

    id: str
    word: str
    span: Span


@dataclass(frozen=True)
class Section:
    """One section of a form.

    `bars` may end in a part of a bar; `meter` is the form's unless the section has its own, and
    so is `tempo`, which is None where nobody gave one. `start_time` is the author's, in seconds
    of the recording; `same_as` the name of another section of the form, "" for none.
    """

    name: str
    bars: Fraction
    meter: Meter
    span: Span
    bars_span: Span
    tempo: Tempo | None = None
    start_time: int | None = None
    same_as: str = ""
    charts: tuple[ChartMention, ...] = ()
    remark: str = ""

    @property
    def length(self) -> Fraction:
        """The length of the section in quarter notes."""
        return self.bars * self.meter.length


@dataclass(frozen=True)
class Form:
    """Everything a form block says.

    `song_length` is the length of the recording in seconds. `complete` is False when a section
    was lost to a fault, so that sums of bars say nothing about the song.
    """

    id: str
    span: Span
    sections: tuple[Section, ...]
    meter: Meter
    title: str = ""
    tempo: Tempo | None = None
    tempo_span: Span | None = None
    song_length: int | None = None
    complete: bool = True
    key: Key | None = None

    @property
    def bars(self) -> Fraction:
        """How many bars the sections have together."""
        return sum((section.bars for section in self.sections), Fraction(0))

    def find(self, name: str) -> Section | None:
        """Return the first section with this name, whatever its capitals; None without one."""
        wanted = name.casefold()
        return next((s for s in self.sections if s.name.casefold() == wanted), None)


def bars_text(bars: Fraction) -> str:
    """Return a number of bars with its word: "1 bar", "7 1/2 bars", "1/2 bar"."""
    return f"{bars_number(bars)} {'bar' if bars <= 1 else 'bars'}"


def bars_number(bars: Fraction) -> str:
    """Return a number of bars as people write it: "16", "7 1/2", "1/2"."""
    whole, rest = divmod(bars, 1)
    return " ".join(str(part) for part in (whole, rest) if part) or "0"
