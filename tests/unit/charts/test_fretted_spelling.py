"""Tablature is spelled by key, by chord and by where its line goes. Common practice, no source."""

import pytest
from unit.charts.reading_aloud import chart_of, read

from sitegen.harmony import degree


def walk(key: str, chords: str, frets: str) -> list[str]:
    """Return "name degree" of each note of a bass line on the A string, in eighths of 2/4."""
    text = f"""
        key: {key}
        bass: standard
        meter: 2/4

        count  | 1   &   2   &   |
        chord  | {chords:<16}|
        bass
          3    | {frets}|
    """
    chart = chart_of(read(text))
    notes = [(e.onset, n) for e in chart.parts[0].voices[0] for n in e.notes if n.pitch]
    named = [(note.pitch, chart.chord_at(onset)) for onset, note in notes]
    return [f"{pitch} {degree(pitch, chord)}" for pitch, chord in named if pitch and chord]


@pytest.mark.parametrize(
    ("key", "chords", "frets", "line"),
    [
        ("A", "A7      D7", "4---5---6---7---", "C♯2 3|D2 11|D♯2 ♭9|E2 9"),
        ("D", "A7", "0---3---4---5---", "A1 R|C2 ♭3|C♯2 3|D2 11"),
        ("E", "B7", "7---6---5---4---", "E2 11|D♯2 3|D2 ♭3|C♯2 9"),
        ("C", "C       Dm7", "3---4---5---5---", "C2 R|C♯2 ♭9|D2 R|D2 R"),
        ("C", "Dm7     C", "5---4---3---3---", "D2 R|C♯2 7|C2 R|C2 R"),
        ("C", "Am7", "0---6---5---3---", "A1 R|E♭2 ♭5|D2 11|C2 ♭3"),
        # A repeated approach note has one name, and a dead note between changes nothing.
        ("C", "C", "3---4---4---5---", "C2 R|C♯2 ♭9|C♯2 ♭9|D2 9"),
        ("C", "C", "3---4---x---5---", "C2 R|C♯2 ♭9|D2 9"),
        ("D minor", "F#m7", "4---1---0---4---", "C♯2 5|B♭1 3|A1 ♭3|C♯2 5"),
    ],
)
def test_a_line_has_names_that_say_where_it_goes(
    key: str, chords: str, frets: str, line: str
) -> None:
    assert "|".join(walk(key, chords, frets)) == line
