"""The reader of `form` blocks: one section a line."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from sitegen.charts.basics import COMMON_TIME, read_key
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.grid.faults import Faults
from sitegen.charts.head import Head, read_id, read_text, split_head
from sitegen.charts.reading import Reading
from sitegen.charts.section import MOST_BARS, Cell, SectionLine, read_section
from sitegen.diagnostics import did_you_mean
from sitegen.score.clock import clock_text, read_clock
from sitegen.score.form import Form, Section
from sitegen.score.meter import Meter
from sitegen.score.tempo import read_tempo
from sitegen.source import Line, Passage

MOST_SECTIONS = 500
HEAD = ("id", "title", "key", "tempo", "meter", "length", "at")
"""The head lines of a form."""


def read_form(passage: Passage, defaults: SongDefaults) -> Reading:
    """Return the form of a `form` fence and every fault in it; None without any section.

    Where neither block nor song names a meter, 4/4 is counted. `at` is the start of the first
    section where that section names none.
    """
    head = split_head(passage)
    form_id = head.take("id", read_id, "")
    title = head.take("title", read_text, "")
    faults = Faults(passage.source)
    form = _read_body(head, defaults, faults)
    head.finish(HEAD)
    if form is not None:
        form = replace(form, id=form_id, title=title)
    return Reading(form_id, title, form, (*head.faults, *faults.found))


def _read_body(head: Head, defaults: SongDefaults, faults: Faults) -> Form | None:
    meter = head.take("meter", Meter.read, defaults.meter or COMMON_TIME)
    tempo = head.take(
        "tempo", lambda text: read_tempo(text, compound=meter.is_compound), defaults.tempo
    )
    key = head.take("key", read_key, None)
    at = head.take("at", read_clock, None)
    length = head.take("length", read_clock, None)
    tempo_field = head.find("tempo")
    lines = [line for line in head.body if line.text.strip()]
    kept = lines[:MOST_SECTIONS]
    read = [read_section(line, meter, tempo, faults) for line in kept]
    _check_count(lines, faults)
    _check_names(read, faults)
    _check_same(read, faults)
    _check_times(read, at, length, faults)
    sections = _placed([line.section for line in read if line.section], at)
    _check_sum(sections, faults)
    if not read:
        faults.add("form-empty", head.passage.opening, "a form without a section")
    if not sections:
        return None
    return Form(
        id="",
        span=sections[0].span.until(sections[-1].span),
        sections=sections,
        meter=meter,
        tempo=tempo,
        tempo_span=tempo_field.value_span if tempo_field else None,
        song_length=length,
        complete=len(sections) == len(lines),
        key=key,
    )


def _placed(sections: list[Section], at: int | None) -> tuple[Section, ...]:
    """Give the first section the time of the head's `at` where it names none itself."""
    if sections and sections[0].start_time is None and at is not None:
        sections = [replace(sections[0], start_time=at), *sections[1:]]
    return tuple(sections)


def _check_count(lines: list[Line], faults: Faults) -> None:
    if len(lines) > MOST_SECTIONS:
        extra = lines[MOST_SECTIONS]
        span = extra.span(0, len(extra.text.rstrip()))
        faults.add("form-long", span, f"a form has up to {MOST_SECTIONS} sections")


def _check_sum(sections: Iterable[Section], faults: Faults) -> None:
    total = Fraction(0)
    for section in sections:
        total += section.bars
        if total > MOST_BARS:
            faults.add("form-long", section.bars_span, f"a form has up to {MOST_BARS} bars")
            return


def _check_names(read: list[SectionLine], faults: Faults) -> None:
    """Warn where two sections have one name: a link or an `=` cannot tell them apart."""
    first: dict[str, SectionLine] = {}
    for line in read:
        name = _folded(line.name.text)
        if not name:
            continue
        if name in first:
            faults.add(
                "form-double",
                line.name.span,
                f'two sections are called "{line.name.text}"',
                label="again",
                hint="number them: Chorus 1, Chorus 2",
                related=((first[name].name.span, "first here"),),
            )
        first.setdefault(name, line)


def _check_same(read: list[SectionLine], faults: Faults) -> None:
    """Find the section behind each `=`; a section that is the same as itself is a fault."""
    names: dict[str, str] = {}
    for line in read:
        if line.name.text:
            names.setdefault(_folded(line.name.text), " ".join(line.name.text.split()))
    for line in read:
        if line.same is None:
            continue
        text = line.same.text[1:].strip()
        skipped = len(line.same.text) - len(line.same.text[1:].lstrip())
        span = line.same.part(min(skipped, len(line.same.text) - 1), len(line.same.text))
        if not text:
            faults.add("form-same", span, "no section stands after =")
        elif _folded(text) not in names:
            hint = did_you_mean(text, names.values())
            faults.add("form-same", span, f'no section is called "{text}"', hint=hint)
        elif _folded(text) == _folded(line.name.text):
            faults.add("form-same", span, "a section is the same as itself")
        elif line.section:
            line.section = replace(line.section, same_as=names[_folded(text)])


def _check_times(
    read: list[SectionLine], at: int | None, length: int | None, faults: Faults
) -> None:
    """Start times rise and stay within the recording; drop those that cannot be.

    Each time is held against the one before it, so that a single slip is reported once.
    """
    before, kept = -1, -1
    if at is not None and read and read[0].time is None:
        before, kept = at, at
    for line in read:
        if line.time is None:
            continue
        seconds = read_clock(line.time.text)
        _check_within(line.time, seconds, at if line is read[0] else None, length, faults)
        if seconds <= before:
            message = f"the start before this one is {clock_text(before)}: times do not rise"
            faults.add("form-order", line.time.span, message)
        if line.section and (seconds <= kept or (length is not None and seconds >= length)):
            line.section = replace(line.section, start_time=None)
        before, kept = seconds, max(seconds, kept)


def _check_within(
    time: Cell, seconds: int, at: int | None, length: int | None, faults: Faults
) -> None:
    """Report a time after the song's end, and a first one that is not the head's `at`."""
    if length is not None and seconds >= length:
        message = f"at {clock_text(seconds)} the song, {clock_text(length)} long, is over"
        faults.add("form-time", time.span, message)
    if at is not None and seconds != at:
        message = f"the head says that the form starts at {clock_text(at)}"
        faults.add("form-time", time.span, message)


def _folded(name: str) -> str:
    return " ".join(name.split()).casefold()
