"""The `notation` block: rows under a count row become a chart."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction

from sitegen.charts.basics import FIELDS, Basics, read_basics
from sitegen.charts.chords import read_symbol
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.grid.cells import check_bar_lines, onset_of, phrases, words
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.groups import Groups, PartGroup, group_rows, part_name
from sitegen.charts.grid.parts import PartReading, PartSetting, read_part
from sitegen.charts.grid.rows import Row, cut_systems
from sitegen.charts.grid.timeline import SystemTime, Timeline, read_timeline
from sitegen.charts.head import Head, HeadField, split_head
from sitegen.charts.instruments import family_of, read_instrument
from sitegen.charts.reading import Reading
from sitegen.harmony import fingering_interval, spell_note
from sitegen.score.chart import Chart, ChordEvent, Remark
from sitegen.score.instrument import Instrument
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch
from sitegen.source import Passage

SHOWS = ("staff", "tab", "drums", "grid", "contour")
MOST_PARTS = 16
Spelling = Callable[[int, Fraction], Pitch]


def read_notation(passage: Passage, defaults: SongDefaults) -> Reading:
    """Return the chart of a `notation` fence and every fault in it.

    The chart is None only when no bar can be counted.
    """
    head = split_head(passage)
    faults = Faults(passage.source)
    basics = read_basics(head, defaults)
    nothing: tuple[str, ...] = ()
    show = head.take("show", _read_show, nothing)
    declared = _declared(head)
    systems = cut_systems(head.body, faults)
    timeline = read_timeline(systems, basics.meter, basics.first_bar, faults)
    groups = [group_rows(time.rows, declared, faults) for time in timeline.systems]
    for time in timeline.systems:
        _check_bar_lines(time, faults)
    if not systems:
        faults.add("notation-empty", passage.opening, "the block has no rows")
    chart = None
    if timeline.bars:
        chart = _make_chart(passage, basics, timeline, show, head, groups, faults)
    head.finish((*FIELDS, "show", *_part_names(groups)))
    return Reading(basics.id, basics.title, chart, (*head.faults, *faults.found))


def _make_chart(
    passage: Passage,
    basics: Basics,
    timeline: Timeline,
    show: tuple[str, ...],
    head: Head,
    groups: list[Groups],
    faults: Faults,
) -> Chart:
    chart = Chart(
        id=basics.id,
        kind="notation",
        span=passage.opening,
        bars=tuple(timeline.bars),
        title=basics.title,
        key=basics.key,
        tempo=basics.tempo,
        feel=basics.feel,
        start_time=basics.start_time,
        chords=_read_chords(groups, timeline, faults),
        sections=_read_remarks([group.section for group in groups], timeline, faults),
        remarks=_read_remarks([group.say for group in groups], timeline, faults),
        label=basics.label,
        roman=bool(basics.roman),
        extras=tuple(way for way in show if way in ("grid", "contour")),
    )
    readings = _read_parts(chart, timeline, show, head, groups, faults)
    return replace(
        chart,
        parts=tuple(reading.part for reading in readings),
        degrees=tuple(degree for reading in readings for degree in reading.degrees),
    )


def _read_show(text: str) -> tuple[str, ...]:
    ways = tuple(dict.fromkeys(word.strip() for word in text.split(",") if word.strip()))
    for way in ways:
        if way not in SHOWS:
            raise ValueError(f'"{way}" is not one of {", ".join(SHOWS)}')
    return ways


def _declared(head: Head) -> dict[str, HeadField]:
    """Return the head lines that may be a part's, by part name."""
    return {
        part_name(entry.name): entry
        for entry in reversed(head.fields)
        if entry.name not in (*FIELDS, "show") and entry.name
    }


def _part_names(groups: Sequence[Groups]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(part.name for group in groups for part in group.parts))


def _check_bar_lines(time: SystemTime, faults: Faults) -> None:
    for line in time.rows.lines:
        if isinstance(line, Row) and line is not time.count:
            check_bar_lines(line, time, faults)


def _read_chords(
    groups: Sequence[Groups], timeline: Timeline, faults: Faults
) -> tuple[ChordEvent, ...]:
    events: list[ChordEvent] = []
    for group, time in zip(groups, timeline.systems, strict=True):
        for row in group.chord:
            made = _read_chord_row(row, time, faults)
            if events and events[-1].onset + events[-1].duration == time.start and made:
                # A chord sounds on into a system whose chord row begins later.
                last = events.pop()
                events.append(replace(last, duration=made[0].onset - last.onset))
            events.extend(made)
    return tuple(events)


def _read_chord_row(row: Row, time: SystemTime, faults: Faults) -> list[ChordEvent]:
    struck: list[ChordEvent] = []
    for cell in words(row):
        if set(cell.text) <= {"-"}:
            continue
        onset = onset_of(cell, row, time, faults)
        chord = read_symbol(cell.text, row.line, cell.column, faults)
        if onset is not None and chord is not None:
            span = row.span(cell.column, cell.end)
            struck.append(ChordEvent(onset, Fraction(0), chord, span))
    ends = [event.onset for event in struck[1:]] + [time.end]
    return [
        replace(event, duration=end - event.onset) for event, end in zip(struck, ends, strict=True)
    ]


def _read_remarks(rows: list[list[Row]], timeline: Timeline, faults: Faults) -> tuple[Remark, ...]:
    remarks = []
    for system_rows, time in zip(rows, timeline.systems, strict=True):
        for row in system_rows:
            for cell in phrases(row):
                onset = onset_of(cell, row, time, faults)
                if onset is not None:
                    remarks.append(Remark(onset, cell.text, row.span(cell.column, cell.end)))
    return tuple(remarks)


def _read_parts(
    chart: Chart,
    timeline: Timeline,
    show: tuple[str, ...],
    head: Head,
    groups: list[Groups],
    faults: Faults,
) -> list[PartReading]:
    readings = []
    spell = _speller(chart)
    names = _part_names(groups)
    _check_declared(head, names, faults)
    for name in names[:MOST_PARTS]:
        written = [
            (part, time)
            for group, time in zip(groups, timeline.systems, strict=True)
            for part in group.parts
            if part.name == name
        ]
        instrument = _read_instrument(name, [part for part, _ in written], head, faults)
        if instrument is None:
            continue
        fingered = _fingering(instrument, chart.key)
        setting = PartSetting(name, instrument, fingered, spell, show)
        readings.append(read_part(setting, written, timeline, faults))
    if len(names) > MOST_PARTS:
        message = f"a chart has more than {MOST_PARTS} parts"
        faults.add("grid-size", chart.span, message)
    return readings


def _speller(chart: Chart) -> Spelling:
    def spell(midi: int, onset: Fraction) -> Pitch:
        return spell_note(midi, chart.key, chart.chord_at(onset))

    return spell


def _read_instrument(
    name: str, written: list[PartGroup], head: Head, faults: Faults
) -> Instrument | None:
    rows = next((group.strings for group in written if group.strings), None)
    labels = {row.label for row in rows or ()}
    numbered = bool(labels) and all(label.isdecimal() for label in labels)
    entry = next((f for f in head.fields if part_name(f.name) == name), None)
    if entry is not None:
        head.find(entry.name)
    # Numbered rows may leave strings out, so they do not tell how many there are.
    count = len(rows) if rows and not numbered else None
    try:
        return read_instrument(name, entry.value if entry else "", count)
    except ValueError as wrong:
        span = entry.value_span if entry else written[0].span
        hint = (
            "a tuning has a usual name, or names its strings from low to high: D2 A2 D3 G3 B3 E4"
        )
        faults.add("instrument", span, f"{name}: {wrong}", hint=hint)
        return None


def _fingering(instrument: Instrument, key: Key | None) -> Interval | None:
    if instrument.reading is not None:
        return instrument.reading.interval
    if instrument.fretted is not None:
        return fingering_interval(instrument.fretted.shift, key)
    return None


def _check_declared(head: Head, names: tuple[str, ...], faults: Faults) -> None:
    """Warn of a part that the head sets up and no row plays."""
    for name, entry in _declared(head).items():
        if name not in names and family_of(name) is not None:
            head.find(entry.name)
            message = f'the head sets up "{name}", but no row plays it'
            hint = f"rows of the block are named {', '.join(names)}" if names else ""
            faults.add("part-unused", entry.name_span, message, hint=hint)
