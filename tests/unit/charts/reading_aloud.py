"""Charts written out in a test and read back as short texts."""

from textwrap import dedent

from sitegen.charts.changes import read_changes
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.notation import read_notation
from sitegen.charts.reading import Reading
from sitegen.score.chart import Chart, Event
from sitegen.source import Passage


def read(text: str, defaults: SongDefaults | None = None) -> Reading:
    """Read a notation block given as an indented text."""
    return read_notation(_passage(text), defaults or SongDefaults())


def changes(text: str) -> Reading:
    """Read a changes block given as an indented text."""
    return read_changes(_passage(text), SongDefaults())


def _passage(text: str) -> Passage:
    return Passage.of(dedent(text).strip("\n"))


def chart_of(reading: Reading) -> Chart:
    """Return the chart of a reading that has no fault."""
    assert [d.message for d in reading.diagnostics] == []
    assert isinstance(reading.chart, Chart)
    return reading.chart


def played(chart: Chart, part: str = "voice", voice: int = 0) -> list[str]:
    """Return each event of a part as "names onset+duration", a rest as "r"."""
    found = next(p for p in chart.parts if p.name == part)
    return [f"{_names(e)} {e.onset}+{e.duration}" for e in found.voices[voice]]


def _names(event: Event) -> str:
    if not event.notes:
        return "r"
    return ",".join(
        str(note.pitch) if note.pitch else (note.drum.label if note.drum else "x")
        for note in event.notes
    )


def faults(reading: Reading) -> list[str]:
    """Return each fault as "code line:column-end_column"."""
    return [
        f"{d.code} {d.span.line}:{d.span.column}-{d.span.end_column}" for d in reading.diagnostics
    ]
