"""The `notation` block: rows under a count row become a chart."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from sitegen.charts.defaults import SongDefaults
from sitegen.charts.grid.block import HEAD_NAMES, Block, take_apart
from sitegen.charts.grid.parts import PartReading, PartSetting, read_part
from sitegen.charts.grid.players import fingering_of, instrument_of, report_unused
from sitegen.charts.grid.systemrows import read_chords, read_remarks
from sitegen.charts.reading import Reading
from sitegen.harmony import spell_note
from sitegen.score.chart import Chart
from sitegen.score.pitch import Pitch
from sitegen.source import Passage

MOST_PARTS = 16


def read_notation(passage: Passage, defaults: SongDefaults) -> Reading:
    """Return the chart of a `notation` fence and every fault in it.

    The chart is None only when no bar can be counted.
    """
    block = take_apart(passage, defaults)
    chart = None
    if block.timeline.bars:
        # Chords come first: the notes of strings are named by key and chord.
        chart = _add_parts(_without_parts(block), block)
        report_unused(block.declared, block.part_names, block.head, block.faults)
    block.head.finish((*HEAD_NAMES, *block.part_names))
    faults = (*block.head.faults, *block.faults.found)
    return Reading(block.basics.id, block.basics.title, chart, faults)


def _without_parts(block: Block) -> Chart:
    basics, faults = block.basics, block.faults
    return Chart(
        id=basics.id,
        kind="notation",
        span=block.passage.opening,
        bars=tuple(block.timeline.bars),
        title=basics.title,
        key=basics.key,
        tempo=basics.tempo,
        feel=basics.feel,
        start_time=basics.start_time,
        chords=read_chords(((rows.chord, time) for rows, time in block.systems), faults),
        sections=read_remarks(((rows.section, time) for rows, time in block.systems), faults),
        remarks=read_remarks(((rows.say, time) for rows, time in block.systems), faults),
        label=basics.label,
        roman=bool(basics.roman),
        extras=tuple(way for way in block.show if way in ("grid", "contour")),
    )


def _add_parts(chart: Chart, block: Block) -> Chart:
    names = block.part_names
    if len(names) > MOST_PARTS:
        message = f"a chart has more than {MOST_PARTS} parts"
        block.faults.add("grid-size", block.rows_of(names[MOST_PARTS])[0][0].span, message)
    readings = [_read_part(name, chart, block) for name in names[:MOST_PARTS]]
    playable = [reading for reading in readings if reading is not None]
    return replace(
        chart,
        parts=tuple(reading.part for reading in playable),
        degrees=tuple(degree for reading in playable for degree in reading.degrees),
    )


def _read_part(name: str, chart: Chart, block: Block) -> PartReading | None:
    rows = block.rows_of(name)
    instrument = instrument_of(name, [group for group, _ in rows], block.head, block.faults)
    if instrument is None:
        return None
    setting = PartSetting(
        name, instrument, fingering_of(instrument, chart.key), _speller(chart), block.show
    )
    return read_part(setting, rows, block.timeline, block.faults)


def _speller(chart: Chart) -> Callable[[int, Fraction, int | None], Pitch]:
    def spell(midi: int, onset: Fraction, goal: int | None) -> Pitch:
        return spell_note(midi, chart.key, chart.chord_at(onset), goal)

    return spell
