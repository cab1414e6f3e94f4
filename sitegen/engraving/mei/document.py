"""The MEI file of a chart: head, score definition and one measure a bar."""

from xml.etree.ElementTree import Element

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.mei.element import NAMESPACE, VERSION, child, serialise
from sitegen.engraving.mei.measures import Score
from sitegen.engraving.player_names import PlayerNames


def write_mei(reading: ChartReading, width: str = "wide", names: PlayerNames | None = None) -> str:
    """Return the chart as an MEI 5.1 file.

    `width` is "wide" or "narrow"; the wide file keeps the systems as the author wrote them.
    Pitches are sounding pitches, with `names` those of its players; every note that sounds has an
    id made of part, bar and beat.
    """
    root = Element("mei", {"xmlns": NAMESPACE, "meiversion": VERSION})
    _write_head(root, reading.chart.title)
    body = child(child(root, "music"), "body")
    score = child(child(body, "mdiv"), "score")
    Score(reading, names, keep_lines=width == "wide").write(score)
    return serialise(root)


def _write_head(root: Element, title: str) -> None:
    description = child(child(root, "meiHead"), "fileDesc")
    child(child(description, "titleStmt"), "title").text = title
    child(description, "pubStmt")
