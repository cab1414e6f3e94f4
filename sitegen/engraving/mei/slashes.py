"""A staff without a part: one slash a beat, as on a rhythm player's chord sheet."""

from fractions import Fraction
from xml.etree.ElementTree import Element

from sitegen.engraving.hierarchy import beats_of, metrical_cells
from sitegen.engraving.mei.element import child, decimal
from sitegen.score.chart import Bar, Chart


class SlashStaff:
    """Writes a slash for each beat of a bar."""

    def __init__(self, chart: Chart) -> None:
        self._bars = chart.bars

    def write_bar(self, staff: Element, number: int) -> None:
        """Write bar `number`."""
        layer = child(staff, "layer", n=1)
        for beat in _beats(self._bars[number]):
            child(layer, "beatRpt", slash=1, beatdef=decimal(float(beat)))


def _beats(bar: Bar) -> list[Fraction]:
    """Return the beats that start in a bar, each as a number of the meter's units."""
    beats = beats_of(metrical_cells(bar.meter))
    inside = [beat for beat in beats if bar.skipped <= beat.start < bar.skipped + bar.length]
    return [beat.length / bar.meter.beat for beat in inside]
