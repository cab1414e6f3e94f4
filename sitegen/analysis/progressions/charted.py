"""The progression of a chart: its chord row as it is played, every chord in its bar."""

from collections import defaultdict
from collections.abc import Mapping
from fractions import Fraction

from sitegen.harmony.progressions import ChordBar, Progression
from sitegen.score.chart import Chart, ChordEvent
from sitegen.score.chord import Chord, NoChord
from sitegen.score.playing_order import bars_as_played

_BAR_LINE = Fraction(0)
_PUSH = Fraction(1, 2)


def chart_progression(chart: Chart) -> Progression:
    """Return the progression of a chart, repeats played out; bars before the first chord are none.

    A chord that comes an eighth or less ahead of a bar line and is held over it counts from the
    bar line: a push is no change of the harmony's rhythm (common practice, no source).
    """
    written = _changes_by_bar(chart)
    bars: list[ChordBar] = []
    sounding: Chord | NoChord | None = None
    for place in bars_as_played(chart.bars):
        bar = chart.bars[place]
        changes = dict(written[place])
        if sounding is not None:
            changes = {_BAR_LINE: sounding, **changes}
        if changes:
            kept = _without_repeats(changes) if len(changes) > 1 else tuple(changes.items())
            bars.append(ChordBar(bar.number, bar.length, kept))
            sounding = kept[-1][1]
    return Progression(tuple(bars), chart.key)


def _changes_by_bar(chart: Chart) -> Mapping[int, dict[Fraction, Chord | NoChord]]:
    """Return for the place of each bar which chords start in it, by their time from its start."""
    bars, place = chart.bars, 0
    changes: defaultdict[int, dict[Fraction, Chord | NoChord]] = defaultdict(dict)
    for event in chart.chords:
        while place + 1 < len(bars) and bars[place + 1].start <= event.onset:
            place += 1
        bar = bars[place]
        if event.onset == bar.start:
            changes[place][_BAR_LINE] = event.chord
        elif place + 1 < len(bars) and _is_push(event, bar.end):
            changes[place + 1][_BAR_LINE] = event.chord
        else:
            changes[place][event.onset - bar.start] = event.chord
    return changes


def _is_push(event: ChordEvent, line: Fraction) -> bool:
    return line - event.onset <= _PUSH and event.onset + event.duration > line


def _without_repeats(
    changes: Mapping[Fraction, Chord | NoChord],
) -> tuple[tuple[Fraction, Chord | NoChord], ...]:
    kept: list[tuple[Fraction, Chord | NoChord]] = []
    for onset in sorted(changes):
        if not kept or changes[onset] != kept[-1][1]:
            kept.append((onset, changes[onset]))
    return tuple(kept)
