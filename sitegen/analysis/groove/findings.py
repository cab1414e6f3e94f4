"""Groove: what the rhythm of a chart's parts does, as facts.

Repeats are taken as written, endings one after the other. Notes that a part strikes together
are one onset; hammered, dead and ghosted notes are onsets as well. A beat is a felt beat: the
count in meters of quarters, the group in 6/8 or 7/8. "Most bars" of a pattern are whole bars,
the pickup and bars cut by a repeat left out.

Every part:

- `<part>.onsets-per-bar`: onsets in the counted bars, by their number.
- `<part>.onsets-per-second`: the same by the clock, where there is a tempo.
- `<part>.swing-ratio`: how its beats are divided in two as written, 1:1, 2:1, 3:1.

Every part but the drums:

- `<part>.pattern`: the counts of the rhythm that comes back most (value: x and -, one
  group a counted beat).
- `<part>.syncopation`: strength a bar after Longuet-Higgins and Lee (1984).
- `<part>.syncopation-by-bar`: the same for each bar, pickup included.
- `<part>.syncopation-per-onset`: the same by the number of onsets.
- `<part>.syncopated-share`: share of the onsets that are syncopated at all.
- `<part>.off-beat-onsets`: onsets that are on no felt beat.
- `<part>.pushes`: onsets up to an eighth ahead of a strong beat and held over it.
- `<part>.pushed-downbeats`: the bars whose downbeat is pushed.
- `<part>.timeline`: the named pattern it plays: tresillo, 3-2 son clave, ...
- `<part>.with-<other>-share`: share of the other part's onsets that it plays as well.
- `<part>.answers`: how often it answers the voice, where it plays in the voice's rests only.
- `<bass>.with-kick-share`: share of the bass drum's hits with a bass note.
- `<bass>.on-kick-share`: share of the bass's onsets with a hit of the bass drum.

Drums:

- `<drums>.kick-pattern`, `<drums>.snare-pattern`, `<drums>.foot-hi-hat-pattern`: where most bars
  have them, ghost notes left out.
- `<drums>.kick-syncopation`, `<drums>.kick-syncopation-by-bar`,
  `<drums>.kick-syncopation-per-onset`, `<drums>.kick-syncopated-share`: of the bass drum alone.
- `<drums>.<drum>-timeline`: the named pattern that kick, snare, side-stick, hand-clap, cowbell,
  ride-bell or foot-hi-hat plays.
- `<drums>.backbeat`: the snare on every second beat, or in half-time or double-time.
- `<drums>.four-on-the-floor`: in how many bars the bass drum has all four beats and no more.
- `<drums>.hi-hat`, `<drums>.ride`: what runs there while it keeps time: eighths, shuffle, ...
- `<drums>.open-hats`, `<drums>.ghost-notes`, `<drums>.accents`: counts, each with its places.
- `<drums>.groove`: the bar that comes back most, or the bars that come round in turn.
- `<drums>.groove-bars`: how many bars equal it.
- `<drums>.bar-likeness`: how alike neighbouring bars are (Dice's coefficient).
- `<drums>.bar-<n>`: what bar n adds to the groove and leaves out.
- `<drums>.fill`: the bars that are fills.
- `<drums>.grouping`: the groups of an odd meter as the drums mark them.

The chart: `feel`, `pickup`, `meters`, `meter-changes`, `same-rhythm` (parts that start all
their notes together).
"""

from collections.abc import Collection, Sequence

from sitegen.analysis.groove.answers import answer_facts
from sitegen.analysis.groove.backbeat import backbeat_facts, floor_facts
from sitegen.analysis.groove.changes import groove_facts
from sitegen.analysis.groove.cymbals import cymbal_facts, open_hat_facts
from sitegen.analysis.groove.density import (
    chart_seconds,
    density_facts,
    off_beat_facts,
    pattern_facts,
    syncopation_facts,
)
from sitegen.analysis.groove.fills import fill_facts, find_fills
from sitegen.analysis.groove.grid import Grid, lay_grid, to_ticks
from sitegen.analysis.groove.kit import drum_name, find_groove_bars, read_kit
from sitegen.analysis.groove.line import Line, Struck, strike
from sitegen.analysis.groove.locking import kick_facts, together_facts
from sitegen.analysis.groove.meters import group_facts, meter_facts
from sitegen.analysis.groove.pushes import push_facts
from sitegen.analysis.groove.swing import feel_facts, swing_facts
from sitegen.analysis.groove.timelines import timeline_facts
from sitegen.analysis.groove.touches import touch_facts
from sitegen.analysis.reading import ChartReading, Fact, NoteReading
from sitegen.analysis.wording import the_part
from sitegen.score.chart import Feel, Part

# Drums whose own rhythm is told, by their word in a path.
_CARRIERS = {
    "BD": "kick",
    "SD": "snare",
    "SS": "side-stick",
    "HC": "hand-clap",
    "HF": "foot-hi-hat",
    "CB": "cowbell",
    "RB": "ride-bell",
}


def find_groove(reading: ChartReading) -> tuple[Fact, ...]:
    """Return what the rhythm of a chart does; the paths stand in this module's docstring."""
    chart = reading.chart
    if not chart.bars:
        return ()
    grid, lines = _lines(reading)
    pitched = [part for part in chart.parts if part.name in lines and not part.is_drums]
    basses = [lines[part.name] for part in pitched if part.instrument.family == "bass"]
    changes = {to_ticks(chord.onset, grid.ticks) for chord in chart.chords}
    bar_count, seconds = chart.bar_count, chart_seconds(chart)
    facts = meter_facts(chart)
    for line in lines.values():
        facts += density_facts(line, bar_count, seconds) + swing_facts(line)
    for part in pitched:
        facts += _part_facts(lines[part.name], bar_count, changes)
    for part in chart.parts:
        if part.is_drums and part.name in lines:
            facts += _drum_facts(lines[part.name], basses, bar_count)
            facts += _kit_facts(lines[part.name], chart.feel)
    facts += together_facts([lines[part.name] for part in pitched])
    facts += _answer_facts(pitched, lines)
    return tuple(facts + feel_facts(chart, facts))


def _lines(reading: ChartReading) -> tuple[Grid, dict[str, Line]]:
    """Return the grid and the rhythm of every part that plays, by its name."""
    chart = reading.chart
    by_part: dict[str, list[NoteReading]] = {}
    for note in reading.notes:
        by_part.setdefault(note.part, []).append(note)
    onsets = [note.onset for note in reading.notes]
    grid = lay_grid(chart, onsets + [chord.onset for chord in chart.chords])
    lines = {}
    for part in chart.parts:
        if part.name in by_part:
            struck = strike(by_part[part.name], grid.ticks)
            lines[part.name] = Line(the_part(part), part.name.replace(" ", "-"), grid, struck)
    return grid, lines


def _part_facts(line: Line, bar_count: int, changes: Collection[int]) -> list[Fact]:
    """Return the facts of one part that is not the drums."""
    path = f"{line.prefix}."
    return [
        *pattern_facts(line, f"{path}pattern"),
        *syncopation_facts(line, path, bar_count),
        *off_beat_facts(line, path),
        *push_facts(line, changes),
        *timeline_facts(line, f"{path}timeline"),
    ]


def _drum_facts(line: Line, basses: Sequence[Line], bar_count: int) -> list[Fact]:
    """Return the facts of the drums, and of each bass against the bass drum."""
    drums = _drum_lines(line)
    facts: list[Fact] = []
    kick, snare = drums.get("kick"), drums.get("snare")
    if kick is not None:
        facts += pattern_facts(kick, f"{line.prefix}.kick-pattern")
        facts += syncopation_facts(kick, f"{line.prefix}.kick-", bar_count)
        facts += [fact for bass in basses for fact in kick_facts(bass, kick, snare)]
    foot = drums.get("foot-hi-hat")
    if foot is not None:
        facts += pattern_facts(foot, f"{line.prefix}.foot-hi-hat-pattern")
    if snare is not None:
        facts += pattern_facts(snare, f"{line.prefix}.snare-pattern", told=True)
    for path, drum in drums.items():
        facts += timeline_facts(drum, f"{line.prefix}.{path}-timeline")
    return facts


def _drum_lines(line: Line) -> dict[str, Line]:
    """Return the rhythm of each drum that may carry one, ghost notes left out."""
    struck: dict[str, Struck] = {}
    for tick, notes in line.struck.items():
        for note in notes:
            drum = note.note.drum
            if drum is not None and drum.label in _CARRIERS and not note.note.ghost:
                struck.setdefault(drum.label, {})[tick] = [note]
    return {
        _CARRIERS[label]: Line(drum_name(label), line.prefix, line.grid, own)
        for label, own in struck.items()
    }


def _kit_facts(line: Line, feel: Feel) -> list[Fact]:
    """Return what the kit does bar by bar."""
    prefix, kit = line.prefix, read_kit(line)
    if not kit:
        return []
    groove = find_groove_bars(kit)
    fills = find_fills(kit, groove)
    return [
        *backbeat_facts(kit, prefix),
        *floor_facts(kit, prefix),
        *cymbal_facts(kit, line.grid.ticks, prefix, feel),
        *open_hat_facts(kit, prefix),
        *touch_facts(kit, prefix),
        *groove_facts(kit, groove, [fill.bar.number for fill in fills], prefix),
        *fill_facts(fills, prefix),
        *group_facts(kit, prefix),
    ]


def _answer_facts(parts: Sequence[Part], lines: dict[str, Line]) -> list[Fact]:
    """Return which parts answer the first voice."""
    voice = next((part for part in parts if part.instrument.family == "voice"), None)
    if voice is None:
        return []
    others = [part for part in parts if part.instrument.family != "voice"]
    return [f for part in others for f in answer_facts(lines[voice.name], lines[part.name])]
