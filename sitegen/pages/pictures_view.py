"""What the page of pictures is given."""

from dataclasses import dataclass

from sitegen.pages.views import Link


@dataclass(frozen=True)
class BarView:
    """One bar: what is counted, where that is listed, and the bar's length in hundredths."""

    link: Link
    count: int
    length: float


@dataclass(frozen=True)
class PictureView:
    """A picture of bars; `what` heads the column of what is counted, `unit` may be "".

    `rest` leads to all values where there are more than bars.
    """

    id: str
    title: str
    what: str
    unit: str
    bars: tuple[BarView, ...]
    rest: Link | None = None


@dataclass(frozen=True)
class StripPart:
    """One section of a song's plan, so many bars long."""

    letter: str
    name: str
    bars: float


@dataclass(frozen=True)
class PlanStrip:
    """The plan of one song; `letters` are its sections in order."""

    link: Link
    letters: str
    parts: tuple[StripPart, ...]
    bars: float


@dataclass(frozen=True)
class PlanView:
    """The plans of several songs, to a scale on which the longest has `longest` bars."""

    strips: tuple[PlanStrip, ...]
    longest: float
