"""The MEI file of a chart: head, score definition and one measure a bar."""

from xml.etree.ElementTree import Element

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.markup import serialise
from sitegen.engraving.mei.element import NAMESPACE, VERSION, child
from sitegen.engraving.mei.measures import Score
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.player_names import PlayerNames


def write_mei(reading: ChartReading, width: str = "wide", names: PlayerNames | None = None) -> str:
    """Return the chart as an MEI 5.1 file.

    `width` is "wide" or "narrow"; the wide file keeps the systems as the author wrote them.
    Pitches are sounding pitches, with `names` those of its players; every note that sounds has an
    id made of part, bar and beat.
    """
    return write_plan(ScorePlan(reading, names), keep_lines=width == "wide")


def write_plan(plan: ScorePlan, *, keep_lines: bool = True) -> str:
    """Return the chart of a plan as `write_mei` does; `keep_lines` keeps the author's systems."""
    root = Element("mei", {"xmlns": NAMESPACE, "meiversion": VERSION})
    _write_head(root, plan.reading.chart.title)
    body = child(child(root, "music"), "body")
    score = child(child(body, "mdiv"), "score")
    Score(plan, keep_lines=keep_lines).write(score)
    return serialise(root)


def _write_head(root: Element, title: str) -> None:
    description = child(child(root, "meiHead"), "fileDesc")
    child(child(description, "titleStmt"), "title").text = title
    child(description, "pubStmt")
