"""The `excerpt` kind: bars of a score file beside the text, shown like typed notation."""

import hashlib
from pathlib import PurePosixPath

from sitegen.charts.basics import FIELDS, read_basics
from sitegen.charts.beside import BesideError
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.excerpt_head import OWN_FIELDS, Wanted, read_wanted
from sitegen.charts.head import Head, split_head
from sitegen.charts.instruments import read_instrument
from sitegen.charts.reading import Reading
from sitegen.diagnostics import did_you_mean
from sitegen.kinds.kind import ChartKind
from sitegen.kinds.notation import draw_notation
from sitegen.kinds.studied import analyse_chart
from sitegen.score.chart import Chart
from sitegen.score.instrument import Instrument
from sitegen.scores import SUFFIXES, FoundScore, ScoreError, read_score
from sitegen.scores.charting import cut_score, stretch_of
from sitegen.scores.found import FoundPart
from sitegen.scores.safety import LARGEST
from sitegen.scores.song import key_at, tempo_at
from sitegen.source import Passage

MOST_BARS, MOST_PARTS = 64, 8
"""An excerpt is short: it is engraved twice, and quotes somebody's music."""
_FIELDS = tuple(name for name in FIELDS if name != "meter")

EXAMPLE = """\
id: lantern
title: The refrain, as sung
file: lantern.abc
bars: 1-4
"""
LANTERN = """\
X:1
T:Lantern Road
M:3/4
L:1/8
Q:1/4=96
K:Dm
A2|"Dm"d3 e f2|"Gm"g4 f2|"A7"e3 d ^c2|"Dm"d4 A2|
"Bb"B3 A G2|"Gm"B2 AG F2|"A"E2 F2 G2|"A7"A4|]
"""


def read_excerpt(passage: Passage, defaults: SongDefaults) -> Reading:
    """Return the chart of an `excerpt` fence and every fault in it.

    The chart is None where the file cannot be read or has none of the bars and parts asked for.
    """
    head = split_head(passage)
    wanted = read_wanted(head)
    if wanted is None and not any(found.code == "head-value" for found in head.faults):
        hint = "write file: and the name of a score beside the text"
        head.report("excerpt-file", passage.opening, "the excerpt names no score file", hint=hint)
    data = _file(head, wanted, defaults) if wanted else b""
    score = _score(head, wanted, data) if wanted and data else None
    chart = _chart(head, wanted, score, defaults) if wanted and score else None
    basics_id, title = _name(head)
    if chart is not None:  # without the score it cannot be said which names are those of parts
        head.finish((*_FIELDS, *OWN_FIELDS))
    for line in head.body:
        message = "an excerpt has head lines only: its music stands in the file"
        head.report("excerpt-line", line.span(0, len(line.text)), message)
    uses = hashlib.blake2b(data, digest_size=16).hexdigest() if data else ""
    return Reading(basics_id, title, chart, tuple(head.faults), uses)


def _name(head: Head) -> tuple[str, str]:
    """Return id and title as far as they can be read; faults in them are told by the basics."""
    quiet = Head(head.passage, head.fields, head.body)
    basics = read_basics(quiet, SongDefaults(), has_first_bar=False)
    return basics.id, basics.title


def _file(head: Head, wanted: Wanted, defaults: SongDefaults) -> bytes:
    """Return what the file holds, nothing where it cannot be had."""
    name, hint, data = wanted.file.value, "", b""
    if PurePosixPath(name).suffix.lower() not in SUFFIXES:
        message = f'"{name}" is no score file that is read here'
        hint = f"files that can be: {', '.join(sorted(SUFFIXES))}"
    elif defaults.beside is None:
        message = f'there is no folder here in which "{name}" could be'
    else:
        try:
            data = defaults.beside.read(name, LARGEST)
            message = "" if data else f'"{name}" is empty'
        except BesideError as wrong:
            message, hint = str(wrong), wrong.hint
    if message:
        head.report("excerpt-file", wanted.file.value_span, message, hint=hint)
    return data


def _score(head: Head, wanted: Wanted, data: bytes) -> FoundScore | None:
    file = wanted.file
    try:
        return read_score(data, PurePosixPath(file.value).suffix.lower())
    except ScoreError as wrong:
        head.report("excerpt-score", file.value_span, f'"{file.value}" is not read: {wrong}')
        return None


def _chart(head: Head, wanted: Wanted, score: FoundScore, defaults: SongDefaults) -> Chart | None:
    parts = _parts(head, wanted, score)
    numbers = _numbers(head, wanted, score)
    if not parts or numbers is None:
        return None
    instruments = [(part, _instrument(head, part.name)) for part in parts]
    stretch = stretch_of(score, numbers)
    _refuse_meter(head)
    song = SongDefaults(
        key_at(score, stretch.start, defaults.key),
        tempo=tempo_at(score, stretch.start, defaults.tempo),
    )
    basics = read_basics(head, song, has_first_bar=False)
    signature = basics.key.fifths if basics.key else None
    cut = cut_score(score, stretch, instruments, signature, wanted.file.value_span)
    for what in cut.left_out:
        message = f"{what}: left out, since a chart cannot show them so"
        head.report("excerpt-loss", wanted.file.value_span, message)
    if cut.held:
        message = "a note is held over the edge of the bars shown, and is cut off there"
        head.report("excerpt-held", wanted.bars_span, message)
    return Chart(
        basics.id,
        "excerpt",
        head.passage.opening,
        cut.bars,
        basics.title,
        basics.key,
        basics.tempo,
        basics.feel,
        basics.start_time,
        cut.parts,
        cut.chords,
        sections=cut.sections,
        label=basics.label,
        roman=bool(basics.roman),
        extras=wanted.extras,
    )


def _parts(head: Head, wanted: Wanted, score: FoundScore) -> tuple[FoundPart, ...]:
    """Return the parts that are asked for, by the names they are to have here."""
    there = {part.name.lower(): part for part in score.parts}
    if not there:
        instead = ", ".join(loss.what for loss in score.losses)
        message = f'"{wanted.file.value}" holds no notes that a chart can show'
        message += f", but {instead}" if instead else ""
        head.report("excerpt-score", wanted.file.value_span, message)
        return ()
    field_ = head.find("parts")
    names = wanted.parts or {name: name for name in there}
    for name in names:
        if name not in there and field_ is not None:
            hint = did_you_mean(name, there) or f"its parts are: {', '.join(there)}"
            message = f'the score has no part "{name}"'
            head.report("excerpt-part", field_.span_of(name), message, hint=hint)
    if len(names) > MOST_PARTS:
        span = head.passage.opening if field_ is None else field_.value_span
        message = f"an excerpt shows up to {MOST_PARTS} parts, and here are {len(names)}"
        hint = f"write parts: and names such as {next(iter(there))}"
        head.report("excerpt-part", span, message, hint=hint)
        return ()
    return tuple(
        FoundPart(as_name, there[name].events) for name, as_name in names.items() if name in there
    )


def _numbers(head: Head, wanted: Wanted, score: FoundScore) -> tuple[int, int] | None:
    first, last = score.bars[0].number, score.bars[-1].number
    numbers = wanted.bars or (first, last)
    span = wanted.bars_span
    if numbers[0] < first or numbers[1] > last:
        message = f"the score has the bars {first} to {last}"
        head.report("excerpt-bars", span, message)
        return None
    if sum(numbers[0] <= bar.number <= numbers[1] for bar in score.bars) > MOST_BARS:
        message = f"an excerpt has up to {MOST_BARS} bars"
        head.report("excerpt-bars", span, message, hint="write bars: 5-8")
        return None
    return numbers


def _instrument(head: Head, name: str) -> Instrument:
    """Return what a part is played on; one whose name is that of a field has no line."""
    plain = read_instrument(name, "", None, has_strings=False)
    if name in (*FIELDS, *OWN_FIELDS):
        return plain
    return head.take(
        name, lambda value: read_instrument(name, value, None, has_strings=False), plain
    )


def _refuse_meter(head: Head) -> None:
    field = head.find("meter")
    if field is not None:
        head.report("head-field", field.name_span, "the meter of an excerpt is its score's")


EXCERPT = ChartKind(
    "excerpt",
    read_excerpt,
    analyse_chart,
    draw_notation,
    EXAMPLE,
    reads_files=True,
    example_files={"lantern.abc": LANTERN},
)
