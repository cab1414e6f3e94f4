"""The `excerpt` kind: bars of a score file beside the text, shown like typed notation."""

import hashlib
import re
from dataclasses import dataclass
from fractions import Fraction
from pathlib import PurePosixPath
from typing import cast

from sitegen.charts.basics import FIELDS, read_basics
from sitegen.charts.beside import BesideError
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.head import Head, HeadField, UnfitValueError, split_head
from sitegen.charts.instruments import read_instrument
from sitegen.charts.reading import Reading
from sitegen.diagnostics import did_you_mean
from sitegen.kinds.kind import ChartKind
from sitegen.kinds.notation import draw_notation
from sitegen.kinds.studied import analyse_chart
from sitegen.score.chart import Chart
from sitegen.score.instrument import Instrument
from sitegen.score.key import Key
from sitegen.score.tempo import BEATS, FASTEST, SLOWEST, Tempo
from sitegen.scores import SUFFIXES, FoundScore, ScoreError, read_score
from sitegen.scores.charting import cut_score
from sitegen.scores.found import FoundPart
from sitegen.scores.safety import LARGEST
from sitegen.source import Passage

MOST_BARS, MOST_PARTS = 64, 8
"""An excerpt is short: it is engraved twice, and quotes somebody's music."""
_RANGE = re.compile(r"([0-9]{1,4})(?:\s*[-–]\s*([0-9]{1,4}))?")
_SHOWS = ("contour",)

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


@dataclass(frozen=True)
class _Wanted:
    """What the head asks for; `file` is None where nothing can be read."""

    file: HeadField | None
    bars: tuple[int, int] | None
    parts: tuple[str, ...]
    extras: tuple[str, ...]


def read_excerpt(passage: Passage, defaults: SongDefaults) -> Reading:
    """Return the chart of an `excerpt` fence and every fault in it.

    The chart is None where the file cannot be read or has none of the bars and parts asked for.
    """
    head = split_head(passage)
    wanted = _Wanted(
        head.find("file"),
        head.take("bars", _read_range, None),
        head.take("parts", _read_names, ()),
        head.take("show", _read_shows, ()),
    )
    data = _file(head, wanted, defaults)
    score = _score(head, wanted, data) if data else None
    chart = _chart(head, wanted, score, defaults) if score is not None else None
    basics_id, title = _name(head)
    if chart is None:
        # Without the score it cannot be said which names are those of parts.
        for name in head.names():
            head.find(name)
    else:
        head.finish((*FIELDS, "file", "parts", "show"))
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


def _file(head: Head, wanted: _Wanted, defaults: SongDefaults) -> bytes:
    if wanted.file is None:
        if not any(fault.code == "head-value" for fault in head.faults):
            span, hint = (
                head.passage.opening,
                "write file: and the name of a score beside the text",
            )
            head.report("excerpt-file", span, "the excerpt names no score file", hint=hint)
        return b""
    name, span = wanted.file.value, wanted.file.value_span
    if PurePosixPath(name).suffix.lower() not in SUFFIXES:
        hint = f"files that can be: {', '.join(sorted(SUFFIXES))}"
        head.report(
            "excerpt-file", span, f'"{name}" is no score file that is read here', hint=hint
        )
        return b""
    if defaults.beside is None:
        head.report("excerpt-file", span, f'there is no folder here in which "{name}" could be')
        return b""
    try:
        data = defaults.beside.read(name, LARGEST)
    except BesideError as wrong:
        head.report("excerpt-file", span, str(wrong), hint=wrong.hint)
        return b""
    if not data:
        head.report("excerpt-file", span, f'"{name}" is empty')
    return data


def _score(head: Head, wanted: _Wanted, data: bytes) -> FoundScore | None:
    field = cast("HeadField", wanted.file)
    try:
        return read_score(data, PurePosixPath(field.value).suffix.lower())
    except ScoreError as wrong:
        head.report("excerpt-score", field.value_span, f'"{field.value}" is not read: {wrong}')
        return None


def _chart(head: Head, wanted: _Wanted, score: FoundScore, defaults: SongDefaults) -> Chart | None:
    field = cast("HeadField", wanted.file)
    parts = _parts(head, wanted, score)
    numbers = _numbers(head, wanted, score)
    if not parts or numbers is None:
        return None
    instruments = {part.name: _instrument(head, part.name) for part in parts}
    try:
        cut = cut_score(score, numbers, parts, instruments, field.value_span)
    except ScoreError as wrong:
        head.report("excerpt-score", field.value_span, f'"{field.value}" is not shown: {wrong}')
        return None
    basics = read_basics(head, _song(score, defaults), has_first_bar=False)
    for what in cut.left_out:
        head.report("excerpt-loss", field.value_span, f"{what} cannot be shown and is left out")
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
        label=basics.label,
        roman=bool(basics.roman),
        extras=wanted.extras,
    )


def _parts(head: Head, wanted: _Wanted, score: FoundScore) -> tuple[FoundPart, ...]:
    named = {part.name.lower(): part for part in score.parts if part.events}
    renamed = {name: FoundPart(name, part.events) for name, part in named.items()}
    if not renamed:
        field = cast("HeadField", wanted.file)
        head.report("excerpt-score", field.value_span, f'"{field.value}" holds no notes')
        return ()
    field_ = head.find("parts")
    chosen = []
    for name in wanted.parts:
        if name in renamed:
            chosen.append(renamed[name])
        elif field_ is not None:
            hint = did_you_mean(name, renamed) or f"its parts are: {', '.join(renamed)}"
            head.report(
                "excerpt-part", field_.span_of(name), f'the score has no part "{name}"', hint=hint
            )
    parts = tuple(chosen) if wanted.parts else tuple(renamed.values())
    if len(parts) > MOST_PARTS:
        span = head.passage.opening if field_ is None else field_.value_span
        message = f"an excerpt shows up to {MOST_PARTS} parts, and the score has {len(parts)}"
        head.report(
            "excerpt-part", span, message, hint=f"write parts: and names such as {parts[0].name}"
        )
        return ()
    return parts


def _numbers(head: Head, wanted: _Wanted, score: FoundScore) -> tuple[int, int] | None:
    first, last = score.bars[0].number, score.bars[-1].number
    numbers = wanted.bars or (first, last)
    field = head.find("bars") or cast("HeadField", wanted.file)
    if numbers[0] < first or numbers[1] > last:
        message = f"the score has the bars {first} to {last}"
        head.report("excerpt-bars", field.value_span, message)
        return None
    if numbers[1] - numbers[0] >= MOST_BARS:
        message = f"an excerpt has up to {MOST_BARS} bars"
        head.report("excerpt-bars", field.value_span, message, hint="write bars: 5-8")
        return None
    return numbers


def _instrument(head: Head, name: str) -> Instrument:
    def read(value: str) -> Instrument:
        return read_instrument(name, value, None, has_strings=False)

    return head.take(name, read, read_instrument(name, "", None, has_strings=False))


def _song(score: FoundScore, defaults: SongDefaults) -> SongDefaults:
    """Return what the score says of itself where the excerpt is silent, else the song's."""
    key, tempo = defaults.key, defaults.tempo
    if score.tonic:
        try:
            key = Key.read(f"{score.tonic} {score.mode}")
        except ValueError:
            key = defaults.key
    for length in BEATS.values():
        if score.tempo and str(length) == score.beat and SLOWEST <= score.tempo <= FASTEST:
            tempo = Tempo(Fraction(score.tempo).limit_denominator(100), length)
    return SongDefaults(key, None, tempo)


def _read_range(text: str) -> tuple[int, int]:
    match = _RANGE.fullmatch(text.strip())
    if match is None:
        raise ValueError(f'"{text}" names no bars; write them as 5-8')
    first, last = int(match[1]), int(match[2] or match[1])
    if last < first:
        raise ValueError(f"bar {last} comes before bar {first}")
    return first, last


def _read_names(text: str) -> tuple[str, ...]:
    return tuple(
        dict.fromkeys(" ".join(name.split()).lower() for name in text.split(",") if name.strip())
    )


def _read_shows(text: str) -> tuple[str, ...]:
    words = tuple(word.strip().lower() for word in text.split(","))
    for word in words:
        if word not in ("staff", *_SHOWS):
            hint = did_you_mean(word, ("staff", *_SHOWS))
            raise UnfitValueError(f'an excerpt shows no "{word}"', word=word, hint=hint)
    return tuple(word for word in words if word in _SHOWS)


EXCERPT = ChartKind(
    "excerpt",
    read_excerpt,
    analyse_chart,
    draw_notation,
    EXAMPLE,
    reads_files=True,
    example_files={"lantern.abc": LANTERN},
)
