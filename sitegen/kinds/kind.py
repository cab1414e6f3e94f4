"""What a chart kind is: a name and how to read, analyse and draw what stands under it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from sitegen.analysis.reading import Fact
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.reading import Reading
from sitegen.diagnostics import Diagnostic
from sitegen.kinds.findings import Finding
from sitegen.score.credits import Credits
from sitegen.source import Passage, Source, Span

__all__ = [
    "Analysis",
    "BarAccount",
    "ChartKind",
    "Drawing",
    "Reading",
    "Surroundings",
]


@dataclass(frozen=True)
class Surroundings:
    """What a chart may know of its article: the places it can point to.

    `headings` maps a heading's text, lower-cased, to its anchor; `charts` maps a chart's id to
    its anchor and name ("Example 3"). `anchor` and `name` are the chart's own, `source` is the
    article's text, for faults. `credits` are the song's, for files that leave the page.
    """

    anchor: str
    name: str
    headings: Mapping[str, str] = field(default_factory=dict)
    charts: Mapping[str, tuple[str, str]] = field(default_factory=dict)
    source: Source = field(default=Source("chart", ""))
    credits: Credits = field(default=Credits())


@dataclass(frozen=True)
class Analysis:
    """What was found in a chart.

    `value` goes to the drawing; `record` is the chart's entry in `explain --json` without its
    facts; `facts` can be cited by prose. `references` are the ids of other charts that this one
    names, each with its place; whoever knows the whole article checks them. `findings` are the
    sentences that stand under the chart.
    """

    value: Any
    record: Mapping[str, object]
    facts: tuple[Fact, ...]
    diagnostics: tuple[Diagnostic, ...]
    references: tuple[tuple[str, Span], ...] = ()
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class BarAccount:
    """A bar (or a section) in words, for whoever cannot see the drawing."""

    place: str
    sentences: tuple[str, ...]


@dataclass(frozen=True)
class Drawing:
    """A drawn chart for a page.

    `piece` names the theme's template in `pieces/` that lays it out with `content`; `summary`
    is one sentence that says what it shows, `account` the whole of it in words. `glyphs` are
    SVG definitions shared by the page, by id. `files` are downloads by file name. `sound` is
    what the page's player needs to play the chart (see `sitegen.performance.record`), None where
    nothing sounds. `findings` are told under the drawing; `switches` name what a reader can
    switch off in it: "degrees", "roles", "numerals". `rights` says whose the music of the files
    is, "" where nobody says.
    """

    piece: str
    content: Any
    summary: str
    account: tuple[BarAccount, ...]
    glyphs: Mapping[str, str] = field(default_factory=dict)
    files: Mapping[str, bytes] = field(default_factory=dict)
    sound: Mapping[str, object] | None = None
    findings: tuple[Finding, ...] = ()
    switches: tuple[str, ...] = ()
    rights: str = ""


@dataclass(frozen=True)
class ChartKind:
    """One kind of chart block.

    `name` is the word after the fence; `example` is a worked fence text, shown in the author's
    guide and run through the contract test of all kinds. `series` is the word that an article's
    charts of this kind are counted under. `looks_around` says that a drawing shows something of
    its surroundings' headings and other charts, `reads_files` that a chart is made of files beside
    the text; `example_files` are those of the example, by name.
    """

    name: str
    read: Callable[[Passage, SongDefaults], Reading]
    analyse: Callable[[Any, Surroundings], Analysis]
    draw: Callable[[Analysis, Surroundings], Drawing]
    example: str
    series: str = "Example"
    looks_around: bool = False
    reads_files: bool = False
    example_files: Mapping[str, str] = field(default_factory=dict, hash=False)
