"""What the author heard against what the engine finds: the check of the degree rows."""

import re
from collections.abc import Iterable, Sequence

from sitegen.analysis.mishearing import explain_mishearing
from sitegen.analysis.reading import NoteReading
from sitegen.diagnostics import Diagnostic, fault
from sitegen.score.chart import Chart, HeardDegree
from sitegen.source import Source

_DEGREE = re.compile(r"([♭♯]*)(R|\d+)")


def check_hearing(
    chart: Chart, notes: Sequence[NoteReading], source: Source
) -> tuple[Diagnostic, ...]:
    """Return a warning for each heard degree that differs, a note for each the author insists on.

    A degree and its octave agree (2 and 9, 4 and 11). Under stacked notes one degree speaks of
    any of them, several speak of all, in any order.
    """
    found = []
    for heard in chart.degrees:
        sounding = [
            n for n in notes if n.part == heard.part and n.onset == heard.onset and n.note.pitch
        ]
        computed = [_named(chart, reading) for reading in sounding]
        if not sounding or _agree(heard.text.split(","), computed):
            continue
        found.append(_difference(chart, heard, sounding, computed, source))
    return tuple(found)


def _named(chart: Chart, reading: NoteReading) -> str:
    return reading.key_degree if chart.label == "key degrees" else reading.degree


def _agree(heard: Sequence[str], computed: Iterable[str]) -> bool:
    found = {_within_octave(text) for text in computed}
    named = {_within_octave(text) for text in heard}
    return named <= found if len(heard) == 1 else named == found


def _within_octave(degree: str) -> tuple[str, int]:
    match = _DEGREE.fullmatch(degree)
    if match is None:
        return degree, 0
    number = 1 if match[2] == "R" else int(match[2])
    return match[1], (number - 1) % 7 + 1


def _difference(
    chart: Chart,
    heard: HeardDegree,
    sounding: Sequence[NoteReading],
    computed: Sequence[str],
    source: Source,
) -> Diagnostic:
    names = ", ".join(str(reading.note.pitch) for reading in sounding)
    against = f"in {chart.key}" if chart.label == "key degrees" else _over(chart, heard)
    is_what = f"{names} {against} is {', '.join(computed)}" if all(computed) else names
    if not all(computed):
        is_what = f"{names} has no degree there, since no chord sounds"
    if heard.insists:
        message = f"you keep {heard.text}; by the symbols {is_what}"
        return fault("degree-kept", source, heard.span, message)
    message = f"you wrote {heard.text}; {is_what}"
    hint = f"mend the note, the chord or the degree, or keep your ear's word with {heard.text}!"
    why = explain_mishearing(chart, heard, sounding[0]) if len(sounding) == 1 else ""
    hint = f"{why}; {hint}" if why else hint
    return fault("degree-heard", source, heard.span, message, hint=hint)


def _over(chart: Chart, heard: HeardDegree) -> str:
    return f"over {chart.chord_at(heard.onset)}"
