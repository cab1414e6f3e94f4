"""Why a heard degree differs: worked out by hand, common practice, no source."""

import pytest
from unit.charts.reading_aloud import chart_of, read

from sitegen.analysis.study import study_chart
from sitegen.source import Source

CHART = """
    key: {key}
    label: {label}

    count  | 1   2   3   4   | 1   2   3   4   |
    chord  | {chord:<16}| F               |
    voice  | {notes:<16}| A4              |
    degree | {heard:<16}|                 |
"""


def hints(
    heard: str, notes: str, chord: str = "C", key: str = "C major", label: str = "degrees"
) -> list[str]:
    text = CHART.format(heard=heard, notes=notes, chord=chord, key=key, label=label)
    return [
        found.hint for found in study_chart(chart_of(read(text)), Source("c", text)).diagnostics
    ]


@pytest.mark.parametrize(
    ("heard", "notes", "chord", "key", "why"),
    [
        ("b3", "E4", "C", "C major", "♭3 over C is E♭"),
        ("7", "Bb4", "C7", "F major", "7 over C7 is B"),
        ("3", "A4", "C", "C major", "A is 3 over F, the next chord"),
        ("    3", "C4  E4", "C   Em", "C major", "E is 3 over C, the chord before"),
        ("6", "A4", "Em", "C major", "A is 6 counted from C, the tonic, and not from the chord"),
        ("#2", "Eb4", "Cm", "C minor", "♯2 over Cm is written D♯, which sounds like E♭"),
    ],
)
def test_the_hint_says_which_slip_it_is(
    heard: str, notes: str, chord: str, key: str, why: str
) -> None:
    found = hints(heard, notes, chord, key)

    assert [hint.split("; ")[0] for hint in found] == [why]
    assert all("keep your ear's word with" in hint for hint in found)


def test_degrees_of_the_key_are_explained_by_the_key() -> None:
    (hint,) = hints("3", "Eb4", chord="C", key="C minor", label="key degrees")

    assert hint.startswith("3 in C minor is E; ")


def test_several_degrees_under_one_note_are_left_without_a_reason() -> None:
    (hint,) = hints("b3,5", "E4", chord="C")

    assert hint.startswith("mend the note")
