"""What the engine finds in a chart, as values: every note and chord with its name in context."""

from dataclasses import dataclass
from fractions import Fraction

from msgspec import Struct

from sitegen.diagnostics import Diagnostic
from sitegen.score.chart import Chart, Note
from sitegen.score.chord import Chord, NoChord
from sitegen.score.role import Role


class NoteReading(Struct, frozen=True):
    """One sounding note of a part against the chord that sounds with it.

    `beat` is counted from 1 in the meter's unit. `degree` ("R", "♭3", "9") and `role` stay
    empty where no chord sounds or the note has no pitch; `key_degree` where there is no key.
    `id` names the note in the engraving as well. `embellishment` says what a non-chord tone
    does ("passing", "suspension", see `sitegen.analysis.embellishments`), "" for all else.
    """

    part: str
    voice: int
    bar: int
    beat: Fraction
    onset: Fraction
    duration: Fraction
    note: Note
    degree: str = ""
    key_degree: str = ""
    role: Role | None = None
    id: str = ""
    embellishment: str = ""


class ChordReading(Struct, frozen=True):
    """One chord of a chart: its numeral in the key ("" without a key) and how its root moves.

    `root_motion` is the interval from the root before, as a musician says it: "up a fourth",
    "down a minor third", "" for the first chord and for the same root again.
    """

    bar: int
    beat: Fraction
    onset: Fraction
    duration: Fraction
    chord: Chord | NoChord
    roman: str = ""
    root_motion: str = ""


class Place(Struct, frozen=True):
    """A place in a chart as it is said: bar and counted beat, from 1; `notes` are ids there."""

    bar: int
    beat: Fraction
    notes: tuple[str, ...] = ()


class Fact(Struct, frozen=True):
    """One figure that prose can cite.

    `value` is exact and printed by `text`; `unit` is "" for a plain count; `evidence` says
    where in the chart it can be seen. `sentence` tells a finding that is worth telling by
    itself in a musician's words, "" for a figure that is only looked up.
    """

    path: str
    value: str | int | Fraction
    text: str
    unit: str = ""
    evidence: tuple[Place, ...] = ()
    sentence: str = ""


@dataclass(frozen=True)
class ChartReading:
    """A chart with everything found in it."""

    chart: Chart
    notes: tuple[NoteReading, ...]
    chords: tuple[ChordReading, ...]
    facts: tuple[Fact, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()
