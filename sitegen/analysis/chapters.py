"""The sections of a form as chapters of the recording: WebVTT, and lines to set below a film."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.analysis.form import FormReading
from sitegen.score.clock import clock_text

_MILLISECONDS = 1000
_ESCAPED = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})


@dataclass(frozen=True)
class Chapter:
    """A stretch of a recording, in seconds."""

    name: str
    start: Fraction
    end: Fraction


def chapters_of(reading: FormReading) -> tuple[Chapter, ...]:
    """Return the sections whose start is known, each up to the next one or its own end.

    Those that would end before they start, or at the same moment, are left out. A form none of
    whose times was heard in the recording has no chapters.
    """
    if all(section.section.start_time is None for section in reading.sections):
        return ()
    known = [section for section in reading.sections if section.start is not None]
    ends = [*(section.start for section in known[1:]), known[-1].end if known else None]
    return tuple(
        Chapter(section.section.name, section.start, end)
        for section, end in zip(known, ends, strict=True)
        if section.start is not None and end is not None and section.start < end
    )


def webvtt(chapters: Sequence[Chapter]) -> str:
    """Return chapters as a WebVTT file: "WebVTT: The Web Video Text Tracks Format", W3C, 2019."""
    cues = (
        f"{_timestamp(one.start)} --> {_timestamp(one.end)}\n{one.name.translate(_ESCAPED)}\n"
        for one in chapters
    )
    return "\n".join(("WEBVTT\n", *cues))


def chapter_lines(chapters: Sequence[Chapter]) -> str:
    """Return a line for each chapter, "0:10 Verse 1", the first at 0:00.

    Hosts that make chapters of such lines want one at 0:00: common practice, no source.
    """
    lines = [f"{clock_text(int(one.start))} {one.name}\n" for one in chapters]
    if chapters and int(chapters[0].start) > 0:
        lines.insert(0, f"{clock_text(0)} Start\n")
    return "".join(lines)


def _timestamp(seconds: Fraction) -> str:
    whole, rest = divmod(round(seconds * _MILLISECONDS), _MILLISECONDS)
    minutes, whole = divmod(whole, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02}:{minutes:02}:{whole:02}.{rest:03}"
