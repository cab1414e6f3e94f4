"""The fields of the front matter that are lists: moments, sources, corrections."""

from collections.abc import Iterator

from sitegen.article.front import Correction, Moment, SourceNote
from sitegen.article.front_fields import Fields
from sitegen.article.front_values import read_date
from sitegen.article.yaml_tree import TextNode
from sitegen.score.clock import read_clock

_EXAMPLES = {
    "sources": "who: and what:",
    "corrections": "date: and what:",
}


def read_moments(fields: Fields) -> tuple[Moment, ...]:
    """Return the moments, each written as `time` and `name`, or in one line: 0:18 The voice."""
    moments = []
    for row in fields.rows("moments"):
        if isinstance(row, TextNode):
            time, _, name = " ".join(row.text.split()).partition(" ")
            moment = _moment(fields, row, time.removesuffix(":"), name)
        else:
            moment = _moment_of_fields(row)
        if moment is not None:
            moments.append(moment)
    return tuple(moments)


def _moment(fields: Fields, row: TextNode, time: str, name: str) -> Moment | None:
    try:
        seconds = read_clock(time)
    except ValueError as wrong:
        fields.report(row.span, f"moments: {wrong}", hint="write it as 0:18 The voice enters")
        return None
    if not name:
        fields.report(row.span, f"the moment {time} has no name")
        return None
    return Moment(seconds, name)


def _moment_of_fields(row: Fields) -> Moment | None:
    first = row.node.fields[0] if len(row.node.fields) == 1 else None
    if first is not None and first.name[:1].isdigit() and isinstance(first.value, TextNode):
        one_line = TextNode("", first.name_span.until(first.value.span))
        name = "" if first.value.absent else " ".join(first.value.text.split())
        return _moment(row, one_line, first.name, name)
    seconds = row.take("time", read_clock, None)
    name = row.text("name")
    row.finish()
    if row.find("time") is None:
        row.report(row.node.span, "the moment has no time", hint='write time: "0:18"')
    if row.find("name") is None:
        row.report(row.node.span, "the moment has no name", hint="write name: and what happens")
    return Moment(seconds, name) if seconds is not None and name else None


def read_sources(fields: Fields) -> tuple[SourceNote, ...]:
    """Return who said what, where and when."""
    notes = []
    for row in _field_rows(fields, "sources"):
        note = SourceNote(row.text("who"), row.text("what"), row.text("where"), row.text("when"))
        row.finish()
        if note.who or note.what:
            notes.append(note)
        else:
            row.report(row.node.span, "the source says neither who nor what")
    return tuple(notes)


def read_corrections(fields: Fields) -> tuple[Correction, ...]:
    """Return what was wrong and when it was put right."""
    corrections = []
    for row in _field_rows(fields, "corrections"):
        day = row.take("date", read_date, None)
        what = row.text("what")
        row.finish()
        if row.find("date") is None:
            row.report(row.node.span, "the correction has no date", hint="write date: 2026-05-04")
        if row.find("what") is None:
            row.report(row.node.span, "the correction does not say what was wrong",
                       hint="write what: and what it was")  # fmt: skip
        if day is not None and what:
            corrections.append(Correction(day, what))
    return tuple(corrections)


def _field_rows(fields: Fields, name: str) -> Iterator[Fields]:
    for row in fields.rows(name):
        if isinstance(row, TextNode):
            message = f'an item of "{name}" takes fields of its own, not one text'
            fields.report(row.span, message, hint=f"write {_EXAMPLES[name]}, one below the other")
        else:
            yield row
