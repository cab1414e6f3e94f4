"""What holds for the groove of any chart."""

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from unit.analysis.groove.rhythms import rhythm_chart, study
from unit.analysis.transposing import transpose_chart
from unit.charts.reading_aloud import chart_of, read

from sitegen.analysis.groove import find_groove, findings
from sitegen.score.chart import Chart, Feel
from sitegen.score.interval import Interval

_NAMES = ["voice", "guitar", "guitar 2", "bass", "keys"]
_DRUMS = ["HH", "RC", "CC", "SD", "SS", "T1", "T2", "FT", "BD", "HF"]
_METERS = ["4/4", "3/4", "6/8", "12/8", "2+2+3/8", "5/4", "2/2", "3/8", "1/4", "16/16"]


@st.composite
def charts(draw: st.DrawFn) -> Chart:
    """Return a chart of any rhythms in any parts."""
    count = draw(st.integers(1, 4))
    names = draw(st.lists(st.sampled_from(_NAMES + _DRUMS), min_size=1, max_size=6, unique=True))
    meters = draw(st.lists(st.sampled_from(_METERS), min_size=count, max_size=count))
    bar = st.sampled_from([1, 3, 4, 5, 7, 8, 12, 16]).flatmap(
        lambda size: st.text("xxOgr--", min_size=size, max_size=size)
    )
    rows = {name: "|".join(draw(bar) for _ in range(count)) for name in names}
    feels: list[Feel] = ["straight", "swing", "shuffle"]
    feel = draw(st.sampled_from(feels))
    tempo = draw(st.sampled_from([None, 96]))
    pickup = draw(st.integers(0, 1)) if meters[0] != "1/4" else 0
    return rhythm_chart(rows, "|".join(meters), feel=feel, tempo=tempo, pickup=pickup)


@given(charts())
def test_any_chart_has_facts_of_one_path_each_with_places_in_order(chart: Chart) -> None:
    facts = find_groove(study(chart))
    paths = [fact.path for fact in facts]
    assert len(paths) == len(set(paths))
    for fact in facts:
        places = [(place.bar, place.beat) for place in fact.evidence]
        assert places == sorted(places)
        assert fact.text
        assert fact.sentence == "" or re.fullmatch(r"[A-Z].*\.", fact.sentence)


@given(charts())
def test_every_path_is_documented(chart: Chart) -> None:
    documented = {
        re.sub(r"<[a-z]+>", "*", path)
        for path in re.findall(r"`([^`\s]+)`", findings.__doc__ or "")
    }
    shown = [re.compile(re.escape(path).replace(r"\*", "[a-z0-9-]+")) for path in documented]
    for fact in find_groove(study(chart)):
        assert any(pattern.fullmatch(fact.path) for pattern in shown), fact.path


@given(charts(), st.sampled_from([Interval(1, 2), Interval(4, 7), Interval(-2, -3)]))
def test_transposing_changes_nothing(chart: Chart, interval: Interval) -> None:
    assert find_groove(study(transpose_chart(chart, interval))) == find_groove(study(chart))


def test_a_chart_without_notes_has_only_what_its_meter_says() -> None:
    chart = rhythm_chart({"voice": "r-------"})
    assert find_groove(study(chart)) == ()
    assert find_groove(study(replace(chart, parts=()))) == ()
    assert find_groove(study(replace(chart, parts=(), bars=()))) == ()


def test_a_push_with_the_chord_and_the_ids_of_its_notes() -> None:
    chart = chart_of(
        read("""
            meter: 4/4
            count | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  | 1  &  2  &  3  &  4  &  |
            chord | C                    F  |                      G  |                         |
            voice | E4                   F4 |       E4             G4 |       F4                |
        """)
    )
    facts = {fact.path: fact for fact in find_groove(study(chart))}
    told = "The voice pushes the downbeat of bars 2 and 3 by an eighth"
    sentence = f"{told}, and the chord changes with it."
    assert facts["voice.pushed-downbeats"].sentence == sentence
    pushed = facts["voice.pushed-downbeats"].evidence
    ids = {note.id for note in study(chart).notes}
    assert [len(place.notes) for place in pushed] == [1, 1]
    assert {name for place in pushed for name in place.notes} <= ids


@pytest.mark.parametrize("sign", ["h--7", "p--3"])
def test_hammered_and_pulled_notes_are_onsets(sign: str) -> None:
    chart = chart_of(
        read(f"""
            meter: 4/4
            guitar: standard
            count | 1   &   2   &   3   &   4   &   |
            guitar
              1   | 5{sign}---------------------------|
        """)
    )
    facts = {fact.path: fact for fact in find_groove(study(chart))}
    assert facts["guitar.onsets-per-bar"].value == 2
