"""The body of a score: its definition, then a measure a bar with endings and line breaks."""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.controls import write_controls
from sitegen.engraving.mei.element import child, put
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.staves import write_meter_change, write_staff_group
from sitegen.engraving.mei.writers import StaffWriter, staff_writer
from sitegen.score.chart import Bar
from sitegen.score.ids import place_slug


class Score:
    """Writes the `score` element of a chart; `keep_lines` keeps the author's systems."""

    def __init__(self, plan: ScorePlan, *, keep_lines: bool) -> None:
        self._plan = plan
        self._bars = plan.chart.bars
        self._keep_lines = keep_lines
        self._writers: dict[int, StaffWriter] = {
            staff.number: staff_writer(self._plan, staff) for staff in self._plan.staves
        }
        self._ids: set[str] = set()

    def write(self, score: Element) -> None:
        """Write the definition and the section of all measures."""
        definition = child(score, "scoreDef")
        write_staff_group(definition, self._plan.chart, self._plan.staves)
        section = home = child(score, "section")
        for number, bar in enumerate(self._bars):
            if self._keep_lines and bar.opens_line and number:
                child(home, "sb")
            if number and bar.meter != self._bars[number - 1].meter:
                write_meter_change(home, self._plan.staves, bar.meter)
            if bar.ending:
                home = self._open_ending(section, number)
            self._write_measure(home, number, bar)
            if bar.ending_closes:
                home = section

    def _open_ending(self, section: Element, number: int) -> Element:
        """Open a bracket; it is left open on the right where no repeat sign closes it."""
        bar = self._bars[number]
        last = next((b for b in self._bars[number:] if b.ending_closes), self._bars[-1])
        shape = "angledown" if last.repeat_end else "none"
        label = bar.ending
        return child(section, "ending", n=label.rstrip("."), label=label, lendsym=shape)

    def _write_measure(self, home: Element, number: int, bar: Bar) -> None:
        measure = child(home, "measure", id=self._measure_id(bar), n=bar.number)
        if bar.length != bar.meter.length:
            put(measure, metcon="false")
        put(measure, left="rptstart" if bar.repeat_start else None, right=_right_line(bar))
        for staff in self._plan.staves:
            written = child(measure, "staff", n=staff.number)
            self._writers[staff.number].write_bar(written, number)
        write_controls(measure, self._plan, number)

    def _measure_id(self, bar: Bar) -> str:
        name = f"bar-{bar.number}"
        if name in self._ids:
            name = f"bar-{place_slug(bar, 1 + bar.skipped / bar.meter.beat)}"
        while name in self._ids:
            name += "-again"
        self._ids.add(name)
        return name


def _right_line(bar: Bar) -> str | None:
    if bar.repeat_end:
        return "rptend"
    return "dbl" if bar.double_bar else None
