"""Moving a whole chart to another key moves its names and leaves all that is found in it."""

import re
from collections.abc import Iterator
from fractions import Fraction

from hypothesis import example, given
from hypothesis import strategies as st
from unit.analysis.lines_over_chords import any_chart, chart_over
from unit.analysis.transposing import transpose_chart

from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.study import study_chart
from sitegen.score.chart import Chart
from sitegen.score.interval import Interval
from sitegen.source import Source

# Intervals that keep every spelling within reach of the signs in use.
INTERVALS = [Interval(1, 2), Interval(2, 3), Interval(3, 5), Interval(4, 7), Interval(-2, -4)]
NAME = re.compile(r"(?<![\w♭♯])[A-G][♭♯]*(?=[\W\d]|m|maj|sus|add|$)")


def study(chart: Chart) -> ChartReading:
    return study_chart(chart, Source("chart", ""))


def without_names(facts: tuple[Fact, ...]) -> Iterator[tuple[str, object, object]]:
    """Yield path, value and places of each fact that does not speak of pitches by name."""
    for fact in facts:
        named = isinstance(fact.value, str) and NAME.search(fact.value)
        yield fact.path, "" if named else fact.value, fact.evidence


# Two symbols that share half a bar: which of their basses is the lower must not depend on the key.
CHANGES_IN_HALF_BARS = chart_over("Asus2:1 Gsus4:1 D/C:4 D/C:3/2 C:1 C:1 Dm7:1 C:2")


@example(CHANGES_IN_HALF_BARS, Interval(2, 3))
@given(any_chart(), st.sampled_from(INTERVALS))
def test_degrees_roles_numerals_and_facts_stay(chart: Chart, interval: Interval) -> None:
    before, after = study(chart), study(transpose_chart(chart, interval))

    assert [(n.degree, n.key_degree, n.role, n.embellishment) for n in before.notes] == [
        (n.degree, n.key_degree, n.role, n.embellishment) for n in after.notes
    ]
    assert [(c.roman, c.root_motion) for c in before.chords] == [
        (c.roman, c.root_motion) for c in after.chords
    ]
    assert list(without_names(before.facts)) == list(without_names(after.facts))


@given(any_chart(), st.sampled_from(INTERVALS))
def test_pitches_move_by_the_interval(chart: Chart, interval: Interval) -> None:
    before, after = study(chart), study(transpose_chart(chart, interval))
    for path in ("lowest", "highest"):
        for one, other in zip(facts(before, path), facts(after, path), strict=True):
            assert one != other
    moved = {(n.note.midi or 0) + interval.semitones for n in before.notes if n.note.pitch}
    assert {n.note.midi for n in after.notes if n.note.pitch} == moved


def facts(reading: ChartReading, last: str) -> list[str | int | Fraction]:
    return [fact.value for fact in reading.facts if fact.path.endswith(f".{last}")]
