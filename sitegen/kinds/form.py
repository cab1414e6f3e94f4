"""The `form` block: a song's sections as a timed plan."""

from collections.abc import Mapping
from fractions import Fraction

from sitegen.analysis.chapters import chapter_lines, chapters_of, webvtt
from sitegen.analysis.form import FormReading, SectionReading, analyse_form
from sitegen.analysis.form_findings import form_facts, form_sentences, form_summary, time_text
from sitegen.analysis.letters import letter_words
from sitegen.charts.form import read_form
from sitegen.figures.form_plan import (
    Plan,
    PlanContent,
    PlanLink,
    PlanRow,
    PlanSection,
    draw_narrow,
    draw_wide,
)
from sitegen.figures.sheet import Target
from sitegen.figures.standalone import svg_file
from sitegen.kinds.kind import Analysis, BarAccount, ChartKind, Drawing, Surroundings
from sitegen.score.form import Form, Section, bars_number, bars_text

EXAMPLE = """\
id: plan
title: The song from end to end
tempo: 96
meter: 4/4
length: 3:03

Intro    | 4     | 0:00
Verse 1  | 16    | 0:10
Chorus 1 | 12    | 0:50
Verse 2  | 16    | 1:20 | = Verse 1 | say: with the drums
Chorus 2 | 12    | 2:00 | = Chorus 1
Bridge   | 7 1/2 | 2:30 | say: half time
Coda     | 5     |
"""


def analyse(form: Form, surroundings: Surroundings) -> Analysis:
    """Return letters, times and facts of a form; the value is a `FormReading`."""
    reading = analyse_form(form, surroundings.source)
    return Analysis(
        reading, _record(reading), form_facts(reading), reading.diagnostics, reading.references
    )


def draw(analysis: Analysis, surroundings: Surroundings) -> Drawing:
    """Draw a form as the piece `plan`, in a wide and a narrow layout."""
    reading: FormReading = analysis.value
    places = _Places(reading.form, surroundings)
    rows = tuple(_row(section, places) for section in reading.sections)
    plan = _plan(reading, rows, surroundings)
    wide = draw_wide(plan)
    return Drawing(
        piece="plan",
        content=PlanContent(wide, draw_narrow(plan), rows, form_sentences(reading)),
        summary=form_summary(reading),
        account=tuple(map(_account, reading.sections, rows)),
        files=_files(reading, svg_file(wide), surroundings.anchor),
        rights=surroundings.credits.rights,
    )


def _files(reading: FormReading, drawing: str, name: str) -> Mapping[str, bytes]:
    """Return the plan to take away, and its chapters where it is placed in a recording."""
    files = {f"{name}.svg": drawing}
    if chapters := chapters_of(reading):
        files |= {f"{name}.vtt": webvtt(chapters), f"{name}.txt": chapter_lines(chapters)}
    return {name: text.encode() for name, text in files.items()}


class _Places:
    """Where a form's sections lead to in its article."""

    def __init__(self, form: Form, surroundings: Surroundings) -> None:
        self._form = form
        self._headings = surroundings.headings
        self._charts = surroundings.charts

    def href(self, section: Section) -> str:
        """Return the heading of that name, else the first chart; those of its model else."""
        models = [section, self._form.find(section.same_as)]
        found = (self._own(model) for model in models if model is not None)
        return next((href for href in found if href), "")

    def links(self, section: Section) -> tuple[PlanLink, ...]:
        """Return the charts that a section names, each once."""
        ids = dict.fromkeys(chart.id for chart in section.charts)
        return tuple(self._link(chart) for chart in ids)

    def _own(self, section: Section) -> str:
        heading = self._headings.get(section.name.lower())
        if heading is not None:
            return f"#{heading}"
        return next((link.href for link in self.links(section) if link.href), "")

    def _link(self, chart: str) -> PlanLink:
        if chart not in self._charts:
            return PlanLink(chart, "")
        anchor, name = self._charts[chart]
        return PlanLink(name, f"#{anchor}")


def _row(reading: SectionReading, places: _Places) -> PlanRow:
    section = reading.section
    return PlanRow(
        letter=reading.letter,
        name=section.name,
        href=places.href(section),
        bars=bars_number(section.bars),
        start=_start(reading),
        length=time_text(reading.seconds) if reading.seconds is not None else "",
        charts=places.links(section),
        remark=section.remark,
        begin=_number(reading.start),
        end=_number(reading.end),
        share=round(float(100 * reading.share), 2),
    )


def _start(reading: SectionReading) -> str:
    if reading.start is None:
        return ""
    counted = "about " if reading.section.start_time is None else ""
    return f"{counted}{time_text(reading.start)}"


def _plan(reading: FormReading, rows: tuple[PlanRow, ...], surroundings: Surroundings) -> Plan:
    sections = tuple(
        _plan_section(section, row) for section, row in zip(reading.sections, rows, strict=True)
    )
    end = sections[-1].end
    if not reading.clock.starts:
        return Plan(surroundings.anchor, form_summary(reading), "bars", sections, end)
    end = max(end, reading.seconds or end)
    return Plan(surroundings.anchor, form_summary(reading), "seconds", sections, end)


def _plan_section(reading: SectionReading, row: PlanRow) -> PlanSection:
    bars = reading.section.bars
    start, length = reading.first_bar - 1, bars
    if reading.start is not None and reading.seconds is not None:
        start, length = reading.start, reading.seconds
    told = f"{row.name}: {row.letter}, {bars_text(bars)}{f', {row.start}' if row.start else ''}"
    target = Target(row.href, told, row.begin, row.end)
    return PlanSection(
        row.letter,
        row.name,
        bars_text(bars),
        start,
        start + length,
        target,
        length=row.length,
        first_bar=str(int(reading.first_bar)),
    )


def _account(reading: SectionReading, row: PlanRow) -> BarAccount:
    """Return a section in words, without signs that a screen reader passes over."""
    section = reading.section
    sentences = [
        f"Letter {letter_words(row.letter)}: {bars_text(section.bars)} of {section.meter}."
    ]
    if section.same_as:
        sentences.append(f"The same as {section.same_as}.")
    if row.start:
        sentences.append(f"Starts at {row.start}, lasts {row.length}.")
    if section.remark:
        sentences.append(f"{section.remark[0].upper()}{section.remark[1:]}.")
    if row.charts:
        sentences.append(f"Shown in {', '.join(link.text for link in row.charts)}.")
    return BarAccount(section.name, tuple(sentences))


def _record(reading: FormReading) -> Mapping[str, object]:
    form = reading.form
    return {
        "id": form.id,
        "kind": "form",
        "title": form.title,
        "key": None if reading.form.key is None else str(reading.form.key),
        "meter": str(form.meter),
        "bars": _number(form.bars),
        "chords": [],
        "notes": [],
        "sections": [_section_record(section) for section in reading.sections],
    }


def _section_record(reading: SectionReading) -> dict[str, object]:
    section = reading.section
    return {
        "name": section.name,
        "letter": reading.letter,
        "bars": _number(section.bars),
        "start": section.start_time,
        "start_computed": _number(reading.computed),
        "length": _number(reading.seconds),
        "same_as": section.same_as or None,
        "charts": [chart.id for chart in section.charts],
    }


def _number(value: Fraction | None) -> int | float | None:
    """Return a number for JSON: whole where it is, else to a thousandth."""
    if value is None:
        return None
    return int(value) if value.denominator == 1 else round(float(value), 3)


FORM = ChartKind("form", read_form, analyse, draw, EXAMPLE, series="Plan", looks_around=True)
