"""The `notation` kind: rows under a count, engraved and named note by note."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.analysis.account import account, summary
from sitegen.analysis.melody import is_melodic
from sitegen.analysis.reading import ChartReading
from sitegen.charts.notation import read_notation
from sitegen.engraving.labels import label_text
from sitegen.engraving.mei.plan import ROLE_CLASSES
from sitegen.figures.contour import Contour, draw_contour
from sitegen.figures.drum_grid import GridBar, drum_grid
from sitegen.harmony import fingered_key
from sitegen.kinds.kind import Analysis, BarAccount, ChartKind, Drawing, Surroundings
from sitegen.kinds.studied import analyse_chart
from sitegen.kinds.takeaway import chart_files
from sitegen.kinds.two_ways import OtherWay, draw_other_way
from sitegen.performance import perform, performance_record
from sitegen.score.chart import Part
from sitegen.score.key import Key
from sitegen.score.pitch import signs
from sitegen.score.role import Role

EXAMPLE = """\
id: evening
title: Two bars of a made-up song
key: Eb minor
meter: 4/4
tempo: 96
guitar: half-step down

count | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
chord | Ebsus2                          | Gbsus2                          |
voice | F5      Ab5     Gb5 F5  r       | F5              Db5     Eb5     |
words | Slow    wa-     ter ris-        | ing             for     me      |
guitar
  e   | --------------------------------|---------------------------------|
  B   | --------------------------------|---------------------------------|
  G   | --------------------------------|---------------------------------|
  D   | 2---2---2---2---2---2---2---2---| 7---7---7---7---7---7---7---7---|
  A   | 2---2---2---2---2---2---2---2---| 5---5---5---5---5---5---5---5---|
  E   | 0---0---0---0---0---0---0---0---| 3---3---3---3---3---3---3---3---|
"""


# How the row of degrees letters each role; it has to be told apart without colour.
_LETTERING = {
    Role.CHORD_TONE: ("{}", "chord tone, upright"),
    Role.TENSION: ("{}", "tension, in italics"),
    Role.NON_CHORD_TONE: ("({})", "non-chord tone, in brackets"),
}


@dataclass(frozen=True)
class LegendEntry:
    """How one role of notes is lettered: a `sample` out of the chart, and what it means.

    `role_class` is the class that such a label has in the drawing.
    """

    role_class: str
    sample: str
    text: str


@dataclass(frozen=True)
class NotationDrawing:
    """What the piece `engraved` lays out.

    `wide` and `narrow` are inline SVG for a column and for a phone; `legend` says how the roles
    of notes are told apart; `setup` tells each instrument's tuning, capo or reading where it
    is not the plain one, and `other_way` is the drawing by the names of its player; `grid` and
    `contour` are there where the author asks for them.
    """

    wide: str
    narrow: str
    legend: tuple[LegendEntry, ...]
    grid: tuple[GridBar, ...] = ()
    contour: Contour | None = None
    setup: tuple[str, ...] = ()
    other_way: OtherWay | None = None


def draw_notation(analysis: Analysis, surroundings: Surroundings) -> Drawing:
    """Return the chart engraved twice, wide and narrow, with its account in words."""
    from sitegen.engraving import engrave  # noqa: PLC0415 - brings verovio

    reading: ChartReading = analysis.value
    chart = reading.chart
    sentence = summary(reading)
    found = {note for finding in analysis.findings for note in finding.notes}
    engraved = engrave(reading, surroundings.anchor, surroundings.name, sentence, found=found)
    other_way = draw_other_way(engraved.plan, surroundings, sentence, found)
    legend = _legend(reading)
    content = NotationDrawing(
        engraved.wide,
        engraved.narrow,
        legend,
        drum_grid(chart) if "grid" in chart.extras else (),
        draw_contour(chart) if "contour" in chart.extras else None,
        tuple(filter(None, (_setup(part, chart.key) for part in chart.parts))),
        other_way,
    )
    bars = tuple(BarAccount(place, sentences) for place, sentences in account(reading))
    performance = perform(chart, engraved.plan.event_ids)
    taken = chart_files(reading, engraved, performance, surroundings)
    return Drawing(
        "engraved",
        content,
        sentence,
        bars,
        engraved.glyphs,
        files={**taken, **(other_way.files if other_way else {})},
        sound=performance_record(performance),
        findings=analysis.findings,
        switches=tuple(_switches(reading, legend)),
        rights=surroundings.credits.rights,
    )


def _labels(reading: ChartReading) -> Iterator[tuple[Role | None, str]]:
    """Yield the role and the label of the notes that are labelled."""
    labelled = {part.name for part in reading.chart.parts if is_melodic(part)}
    for note in reading.notes:
        text = label_text(reading.chart, note.onset, note) if note.part in labelled else ""
        if text:
            yield note.role, text


def _legend(reading: ChartReading) -> tuple[LegendEntry, ...]:
    """Return what the lettering of the degrees means, where it tells more than one role."""
    samples: dict[Role, str] = {}
    for role, text in _labels(reading):
        if role is not None:
            samples.setdefault(role, text)
    if samples.keys() <= {Role.CHORD_TONE}:
        return ()
    return tuple(
        LegendEntry(ROLE_CLASSES[role], lettering.format(samples[role]), text)
        for role, (lettering, text) in _LETTERING.items()
        if role in samples
    )


def _switches(reading: ChartReading, legend: tuple[LegendEntry, ...]) -> Iterator[str]:
    """Yield what a reader can switch off in the drawing."""
    if any(_labels(reading)):
        yield "degrees"
    if legend:
        yield "roles"
    if reading.chart.roman and any(chord.roman for chord in reading.chords):
        yield "numerals"


def _setup(part: Part, key: Key | None) -> str:
    """Return how a part is tuned or read, and the key it is fingered in; "" for the plain case."""
    fretted, reading = part.instrument.fretted, part.instrument.reading
    name = part.name.capitalize()
    if reading is not None:
        tonic = f", in {reading.interval.above_name(key.tonic)} {key.mode}" if key else ""
        return _with_signs(f"{name}: {reading.name}{tonic}")
    if fretted is None:
        return ""
    plain = fretted.tuning == fretted.standard
    ways = [] if plain and fretted.capo else [fretted.tuning.name]
    ways += [f"capo {fretted.capo}"] if fretted.capo else []
    if key is not None and fretted.shift % 12:
        ways.append(f"fingered in {fingered_key(key, fretted.shift)}")
    return "" if ways == [fretted.standard.name] else _with_signs(f"{name}: {', '.join(ways)}")


def _with_signs(text: str) -> str:
    """Return a text with the accidentals of its note names as ♭ and ♯: drop C♯."""
    return re.sub(r"(?<=\b[A-G])[b#](?![a-z])", lambda sign: signs(sign[0]), text)


NOTATION = ChartKind("notation", read_notation, analyse_chart, draw_notation, EXAMPLE)
