"""One part of a `notation` block, gathered from all its systems."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from sitegen.charts.grid.attached import deal_words, read_degrees, read_marks
from sitegen.charts.grid.drumrows import read_drum_row, strike_drums
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.groups import PartGroup
from sitegen.charts.grid.hold import Struck, hold
from sitegen.charts.grid.pitched import PitchedReader
from sitegen.charts.grid.players import Fingering
from sitegen.charts.grid.stringrows import StringEvent, StringReader, string_order
from sitegen.charts.grid.tab import Speller, strike
from sitegen.charts.grid.timeline import SystemTime, Timeline
from sitegen.score.chart import Event, HeardDegree, Part, StretchMark
from sitegen.score.instrument import Instrument

Shows = Literal["staff", "tab", "drums"]
Written = Sequence[tuple[PartGroup, SystemTime]]


@dataclass(frozen=True)
class PartSetting:
    """What a part's reader must know besides its rows.

    `fingered` gives a sounding pitch its fingered or read name, None where the part has no such
    difference; `spell` names a MIDI number at an onset; `show` are the author's words.
    """

    name: str
    instrument: Instrument
    fingered: Fingering | None
    spell: Speller
    show: tuple[str, ...]


MOST_VERSES = 50


@dataclass
class PartReading:
    """A part and what its rows say besides notes."""

    part: Part
    degrees: list[HeardDegree] = field(default_factory=list)


def read_part(
    setting: PartSetting, written: Written, timeline: Timeline, faults: Faults
) -> PartReading:
    """Return the part that the groups of rows in `written` make up, system by system."""
    voices = _read_voices(setting, written, timeline, faults)
    stretches: list[StretchMark] = []
    degrees: list[HeardDegree] = []
    first = list(voices[0])
    for group, time in written:
        for row in group.mark:
            stretches.extend(read_marks(row, time, first, faults))
        if len(group.words) > MOST_VERSES:
            message = f"more than {MOST_VERSES} rows of words stand under one part"
            faults.add("grid-size", group.words[MOST_VERSES].label_span, message)
        for verse, row in enumerate(group.words[:MOST_VERSES], start=1):
            bars = [timeline.bars[n] for n in time.bars]
            deal_words(row, verse, time, bars, first, faults)
        for row in group.degree:
            degrees.extend(read_degrees(row, setting.name, time, first, faults))
    part = Part(
        setting.name,
        setting.instrument,
        (tuple(first), *voices[1:]),
        _shows(setting, written),
        tuple(stretches),
    )
    return PartReading(part, degrees)


def _read_voices(
    setting: PartSetting, written: Written, timeline: Timeline, faults: Faults
) -> tuple[tuple[Event, ...], ...]:
    stretches = [(time.start, time.end) for _, time in written]

    def held(struck: list[Struck]) -> tuple[Event, ...]:
        return hold(struck, stretches, timeline.cuts, timeline.end)

    if setting.instrument.family == "drums":
        hits = [
            hit
            for group, time in written
            for row in group.drums
            for hit in read_drum_row(row, time, faults)
        ]
        hands, feet = strike_drums(hits, timeline)
        return (held(hands), held(feet)) if feet else (held(hands),)
    pitched = PitchedReader(setting.fingered, faults)
    struck = [
        note
        for group, time in written
        if group.pitched
        for note in pitched.read(group.pitched, time)
    ]
    struck += _strike_strings(setting, written, faults)
    return (held(struck),)


def _strike_strings(setting: PartSetting, written: Written, faults: Faults) -> list[Struck]:
    fretted = setting.instrument.fretted
    if fretted is None:
        return []
    events: list[StringEvent] = []
    for group, time in written:
        order = string_order(group.strings, fretted, faults) if group.strings else None
        for row, string in zip(group.strings, order or (), strict=False):
            events.extend(StringReader(row, string, time, faults).read())
    return strike(events, fretted, setting.spell, setting.fingered, faults)


def _shows(setting: PartSetting, written: Written) -> tuple[Shows, ...]:
    if setting.instrument.family == "drums":
        return ("drums",)
    if not any(group.strings for group, _ in written):
        return ("staff",)
    both: tuple[Shows, ...] = ("staff", "tab")
    return tuple(way for way in both if way in setting.show) or both
