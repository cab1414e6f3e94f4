"""Whatever the chart: nothing raises, and what names no pitch is the same in every key."""

from hypothesis import given
from hypothesis import strategies as st
from unit.analysis.lines_over_chords import any_chart
from unit.analysis.roots.facts_aloud import named
from unit.analysis.transposing import transpose_chart
from unit.charts.reading_aloud import changes

from sitegen.analysis.bass import find_bass_motions
from sitegen.analysis.chord_techniques import find_chord_techniques
from sitegen.analysis.roots import find_root_motions
from sitegen.score.chart import Chart
from sitegen.score.interval import Interval

PROVIDERS = (find_root_motions, find_bass_motions, find_chord_techniques)
NAMING_PITCHES = ("common-tone", "bass-line")
INTERVALS = [Interval(1, 2), Interval(2, 3), Interval(3, 5), Interval(4, 7), Interval(-1, -1)]
SYMBOLS = "C Am Dm7 G7 F Fm E7 D7 Db7 Ab Eb Bb C/E G/B F/C Cmaj7 C7 C6 C+ Am7/G F#dim7 A5 N.C."
KEYS = ("", "C major", "C minor", "A minor", "G mixolydian", "D dorian")
BAR_LINES = ("|", "|", "|", "|:", ":|", "|(1.)", ":|(2.)")


def values(chart: Chart) -> dict[str, tuple[object, ...]]:
    """Return what the facts of a chart say without its pitches."""
    reading = named(chart)
    return {
        fact.path: (fact.value, fact.text, fact.evidence, bool(fact.sentence))
        for provide in PROVIDERS
        for fact in provide(reading)
        if not fact.path.endswith(NAMING_PITCHES)
    }


@st.composite
def any_progression(draw: st.DrawFn) -> Chart:
    """Draw a progression in any key or none, with repeats and endings in any order."""
    symbols = st.lists(st.sampled_from(SYMBOLS.split()), min_size=1, max_size=3)
    bars = draw(st.lists(st.tuples(st.sampled_from(BAR_LINES), symbols), min_size=1, max_size=16))
    key = draw(st.sampled_from(KEYS))
    text = " ".join(f"{line} {' '.join(chords)}" for line, chords in bars)
    chart = changes(f"key: {key}\n\n{text} |" if key else f"{text} |").chart
    assert isinstance(chart, Chart)
    return chart


@given(st.one_of(any_chart(), any_progression()), st.sampled_from(INTERVALS))
def test_transposing_a_chart_changes_no_fact_without_a_pitch(
    chart: Chart, interval: Interval
) -> None:
    assert values(transpose_chart(chart, interval)) == values(chart)
