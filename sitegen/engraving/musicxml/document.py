"""The MusicXML file of a chart: whose it is, who plays, and the measures of each part."""

from collections.abc import Iterator
from fractions import Fraction
from math import lcm
from xml.etree.ElementTree import Element

from sitegen import __version__
from sitegen.analysis.reading import ChartReading
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.staves import Staff
from sitegen.engraving.musicxml.element import child, serialise
from sitegen.engraving.musicxml.measures import Measures
from sitegen.engraving.musicxml.players import player_id, write_player
from sitegen.score.credits import Credits

_NOBODY = Credits()


def write_musicxml(
    reading: ChartReading, credits_: Credits = _NOBODY, plan: ScorePlan | None = None
) -> str:
    """Return the chart as a MusicXML 4.0 file of type partwise.

    A part is one staff. One that has notation and tablature is written as notation whose notes
    name string and fret: two staves of the same notes would be read, and played, as twice the
    notes by whatever does not know that they are one. Repeats are not written out. A chart of
    chords alone has one part with a rest a bar that is shown as slashes. What the analysis
    finds, degrees and numerals, stays on the page. `plan` is the chart's as it sounds, where
    there is one already.
    """
    plan = plan or ScorePlan(reading)
    root = Element("score-partwise", {"version": "4.0"})
    _write_head(root, reading.chart.title, credits_)
    staves = _staves(plan)
    players = child(root, "part-list")
    for number, staff in enumerate(staves, start=1):
        write_player(players, staff.part, number)
    divisions = _divisions(plan)
    for number, staff in enumerate(staves, start=1):
        part = child(root, "part", id=player_id(number))
        Measures(plan, staff, divisions, player=number).write(part)
    return serialise(root)


def _staves(plan: ScorePlan) -> list[Staff]:
    """Return the first staff of each part."""
    found: dict[str, Staff] = {}
    for staff in plan.staves:
        found.setdefault(staff.part.name if staff.part else "", staff)
    return list(found.values())


def _divisions(plan: ScorePlan) -> int:
    """Return into how many parts a quarter falls so that everything begins and ends on one."""
    return lcm(*{time.denominator for time in _times(plan)})


def _times(plan: ScorePlan) -> Iterator[Fraction]:
    chart = plan.chart
    for bar in chart.bars:
        yield bar.start
        yield bar.length
    for voices in plan.voices.values():
        for voice in voices:
            for written in voice.events():
                yield written.piece.start
                yield written.piece.length
    yield from (remark.onset for remark in (*chart.sections, *chart.remarks))
    yield from (event.onset for event in chart.chords)
    for part in chart.parts:
        for mark in part.stretches:
            yield from (mark.onset, mark.end)


def _write_head(root: Element, title: str, credits_: Credits) -> None:
    if credits_.song:
        child(child(root, "work"), "work-title", credits_.song)
    if title:
        child(root, "movement-title", title)
    about = child(root, "identification")
    for writer in credits_.writers:
        child(about, "creator", writer, type="composer")
    if credits_.artist:
        child(about, "creator", credits_.artist, type="artist")
    if credits_.rights:
        child(about, "rights", credits_.rights)
    encoding = child(about, "encoding")
    child(encoding, "software", f"sitegen {__version__}")
    child(encoding, "supports", element="print", attribute="new-system", value="yes", type="yes")
    for element in ("accidental", "beam"):
        child(encoding, "supports", element=element, type="yes")
