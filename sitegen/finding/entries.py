"""What a write-up's charts hold, gathered from their analyses."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.analysis.form import FormReading
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.finding.beats import find_beats
from sitegen.finding.chords import find_progression
from sitegen.finding.entry import (
    ChartEntry,
    ChordStep,
    Entry,
    Melody,
    Progression,
    Section,
    Technique,
)
from sitegen.finding.melodies import find_melodies
from sitegen.finding.techniques import find_techniques
from sitegen.score.chart import Chart, Part
from sitegen.score.chord import Chord as ChordSymbol
from sitegen.score.meter import Meter

BASS_TRITONE = "tritone in the bass"
ODD_METER = "odd meter"
_SEEN = (BASS_TRITONE, ODD_METER)
TRAITS = (
    "chord-tone-share",
    "contour",
    "kick-pattern",
    "pattern",
    "phrase-starts",
    "snare-pattern",
    "timeline",
)
"""The ends of the paths of facts that write-ups are compared by."""

_OCTAVE, _TRITONE = 12, 6


@dataclass(frozen=True)
class NamedAnalysis:
    """A chart of a write-up: what it is called, and what was found in it."""

    anchor: str
    name: str
    title: str
    kind: str
    value: object
    facts: tuple[Fact, ...] = ()
    id: str = ""


def make_entry(charts: Iterable[NamedAnalysis]) -> Entry:
    """Return what a write-up holds; its `charts` are in the order of the page."""
    entries: list[ChartEntry] = []
    sections: tuple[Section, ...] = ()
    for chart in charts:
        if isinstance(chart.value, ChartReading):
            entries.append(_chart_entry(chart, chart.value))
        elif isinstance(chart.value, FormReading):
            sections = sections or _sections(chart.value)
    return Entry(tuple(entries), sections)


def _sections(form: FormReading) -> tuple[Section, ...]:
    return tuple(
        Section(
            one.section.name,
            one.letter,
            float(one.section.bars),
            -1 if one.start is None else float(one.start),
        )
        for one in form.sections
    )


def _chart_entry(named: NamedAnalysis, reading: ChartReading) -> ChartEntry:
    chart = reading.chart
    progression, melodies = find_progression(chart), find_melodies(reading)
    techniques = _techniques(reading, named.facts, progression, melodies)
    return ChartEntry(
        named.anchor,
        named.name,
        named.title,
        named.kind,
        str(chart.bars[0].meter),
        "" if chart.key is None else str(chart.key),
        0 if chart.tempo is None else float(chart.tempo.beats_per_minute),
        chart.feel,
        tuple(dict.fromkeys(part.instrument.family for part in chart.parts)),
        tuple(dict.fromkeys(_tunings(chart.parts))),
        tuple(dict.fromkeys(_qualities(chart))),
        progression,
        melodies,
        find_beats(reading),
        techniques,
        tuple(_traits(named.facts)),
        named.id,
        chart.bar_count,
        -1 if chart.start_time is None else chart.start_time,
    )


def _tunings(parts: Sequence[Part]) -> Iterator[str]:
    """Return the tunings of guitars and the like, by name; a capo is told beside it."""
    for part in parts:
        fretted = part.instrument.fretted
        if fretted is not None:
            yield fretted.tuning.name
            if fretted.capo:
                yield f"capo {fretted.capo}"


def _qualities(chart: Chart) -> Iterator[str]:
    return (event.chord.quality for event in chart.chords if isinstance(event.chord, ChordSymbol))


def _techniques(
    reading: ChartReading,
    facts: tuple[Fact, ...],
    progression: Progression | None,
    melodies: Sequence[Melody],
) -> tuple[Technique, ...]:
    tunes = [melody.part.replace(" ", "-") for melody in melodies if not melody.bass]
    bars = {one.name: set(one.bars) for one in find_techniques(facts, tunes)}
    bars[BASS_TRITONE] = _bass_tritones(progression, melodies)
    bars[ODD_METER] = _odd_bars(reading.chart)
    # What is told without places was found by a fact; these two are seen in bars or not at all.
    found = {name: seen for name, seen in bars.items() if seen or name not in _SEEN}
    return tuple(Technique(name, tuple(sorted(found[name]))) for name in sorted(found))


def _bass_tritones(progression: Progression | None, melodies: Sequence[Melody]) -> set[int]:
    """Return the bars where the bass moves by six semitones, to or from."""
    bars: set[int] = set()
    steps = () if progression is None else progression.steps
    for before, after in pairwise(steps):
        if (bass_of(after) - bass_of(before)) % _OCTAVE == _TRITONE:
            bars |= {before.last_bar, after.bar}
    for melody in melodies:
        pairs = pairwise(zip(melody.midi, melody.bars, strict=True)) if melody.bass else ()
        for (low, first), (high, second) in pairs:
            if (high - low) % _OCTAVE == _TRITONE:
                bars |= {first, second}
    return bars


def bass_of(step: ChordStep) -> int:
    """Return the pitch class of a chord's bass."""
    _, slash, over = step.notes.partition("/")
    return (step.root + int(over, 16)) % _OCTAVE if slash else step.root


def _odd_bars(chart: Chart) -> set[int]:
    return {bar.number for bar in chart.bars if is_odd(bar.meter)}


def is_odd(meter: Meter) -> bool:
    """Return whether the bar falls into unequal beats or into five, seven, eleven or more of them.

    Common practice, no source: 3/4, 6/8, 9/8 and 12/8 are not called odd.
    """
    groups = meter.groups
    if len(set(groups)) > 1:
        return True
    return len(groups) % 2 == 1 and len(groups) > 3  # noqa: PLR2004 - three beats are no oddity


def _traits(facts: Iterable[Fact]) -> Iterator[tuple[str, str]]:
    values: Mapping[str, str] = {fact.path: str(fact.value) for fact in facts}
    for path, value in values.items():
        if path.rpartition(".")[2] in TRAITS:
            yield path, value
