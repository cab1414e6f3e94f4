"""The `changes` kind: a progression in bars, with numerals and root motion."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping
from fractions import Fraction

from sitegen.analysis.account import account, summary
from sitegen.analysis.reading import ChartReading, ChordReading
from sitegen.charts.changes import read_changes
from sitegen.figures.progression import ProgressionBar, ProgressionCell, ProgressionDrawing
from sitegen.kinds.kind import Analysis, BarAccount, ChartKind, Drawing, Surroundings
from sitegen.kinds.studied import analyse_chart
from sitegen.kinds.takeaway import chart_files
from sitegen.performance import Performance, perform, performance_record
from sitegen.score.chart import Bar

EXAMPLE = """\
id: verse
title: Verse changes
key: G
meter: 4/4
tempo: 72

Verse | G | Em / C/E / | Am7 D7 | % |
|: Cm . G . | A7 | (1.) D7 :|(2.) G ||
"""


def draw_changes(analysis: Analysis, surroundings: Surroundings) -> Drawing:
    """Return the progression as bars for the theme, with its account in words."""
    reading: ChartReading = analysis.value
    sentence = summary(reading)
    bars = tuple(BarAccount(place, sentences) for place, sentences in account(reading))
    performance = perform(reading.chart)
    has_numerals = any(chord.roman for chord in reading.chords)
    return Drawing(
        "progression",
        lay_out(reading),
        sentence,
        bars,
        files=_files(reading, performance, surroundings, sentence),
        sound=performance_record(performance),
        findings=analysis.findings,
        switches=("numerals",) if has_numerals else (),
        rights=surroundings.credits.rights,
    )


def _files(
    reading: ChartReading, performance: Performance, surroundings: Surroundings, sentence: str
) -> Mapping[str, bytes]:
    """Return what can be taken away: the page's bars are HTML, a file has slashes on a staff."""
    from sitegen.engraving.engraved import engrave_wide  # noqa: PLC0415 - brings verovio

    engraved = engrave_wide(reading, surroundings.anchor, surroundings.name, sentence)
    return chart_files(reading, engraved, performance, surroundings)


def lay_out(reading: ChartReading) -> ProgressionDrawing:
    """Return the bars of a chart with what stands in each."""
    chart = reading.chart
    bars: list[ProgressionBar] = []
    bracket = ""
    for bar, cells in zip(chart.bars, _cells(reading), strict=True):
        bracket = bar.ending or bracket
        bars.append(_lay_out_bar(reading, bar, cells, bracket))
        bracket = "" if bar.ending_closes else bracket
    key = "" if chart.key is None else str(chart.key)
    tempo = "" if chart.tempo is None else str(chart.tempo)
    return ProgressionDrawing(tuple(bars), key, tempo)


def _cells(reading: ChartReading) -> Iterator[tuple[ProgressionCell, ...]]:
    """Yield what stands in each bar; chords come one after the other, so places are looked up."""
    chords = reading.chords
    onsets = [chord.onset for chord in chords]
    ends = [chord.onset + chord.duration for chord in chords]
    for bar in reading.chart.bars:
        start, end = bar.start, bar.end
        heard = range(bisect_right(ends, start), bisect_left(onsets, end))
        yield tuple(
            _cell(chords[n], max(onsets[n], start), min(ends[n], end), bar.meter.beat)
            for n in heard
        )


def _cell(chord: ChordReading, start: Fraction, end: Fraction, beat: Fraction) -> ProgressionCell:
    held = chord.onset < start
    return ProgressionCell(
        chord.chord,
        (end - start) / beat,
        chord.roman,
        "" if held else chord.root_motion,
        held=held,
    )


def _lay_out_bar(
    reading: ChartReading, bar: Bar, cells: tuple[ProgressionCell, ...], bracket: str
) -> ProgressionBar:
    end = bar.end
    sections = reading.chart.sections
    return ProgressionBar(
        number=bar.number,
        cells=cells,
        meter=str(bar.meter) if bar.new_meter else "",
        section=next((s.text for s in sections if bar.start <= s.onset < end), ""),
        same_as_before=bar.same_as_before,
        repeat_start=bar.repeat_start,
        repeat_end=bar.repeat_end,
        double_bar=bar.double_bar,
        ending=bracket,
        ending_opens=bool(bar.ending),
        ending_closes=bar.ending_closes,
    )


CHANGES = ChartKind("changes", read_changes, analyse_chart, draw_changes, EXAMPLE)
