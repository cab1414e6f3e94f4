"""A progression as a chart of bars: what the theme's piece `progression` sets in a grid."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.score.chord import Chord, NoChord


@dataclass(frozen=True)
class ProgressionCell:
    """One chord in its bar, `beats` counted beats wide.

    `held` marks a chord that sounds on from the bar before: its symbol is drawn in brackets.
    `root_motion` is how the root came here, as `ChordReading` says it.
    """

    chord: Chord | NoChord
    beats: Fraction
    roman: str = ""
    root_motion: str = ""
    held: bool = False


@dataclass(frozen=True)
class ProgressionBar:
    """One bar of the chart with its bar lines.

    `same_as_before` draws the one-bar repeat sign in place of the cells, which stay there for
    whoever reads them aloud. `meter` is given where it is to be shown, `section` where one
    starts. `ending` is the text of the bracket over the bar, `ending_opens` and
    `ending_closes` say where the bracket has its hooks.
    """

    number: int
    cells: tuple[ProgressionCell, ...]
    meter: str = ""
    section: str = ""
    same_as_before: bool = False
    repeat_start: bool = False
    repeat_end: bool = False
    double_bar: bool = False
    ending: str = ""
    ending_opens: bool = False
    ending_closes: bool = False


@dataclass(frozen=True)
class ProgressionDrawing:
    """The whole chart in reading order; the theme breaks it into rows of `bars_a_row`."""

    bars: tuple[ProgressionBar, ...]
    key: str = ""
    tempo: str = ""
    bars_a_row: int = 4
