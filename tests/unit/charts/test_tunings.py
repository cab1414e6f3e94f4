"""What a part's head line says: tunings by name and by string, capo, transposition."""

import pytest
from unit.charts.reading_aloud import chart_of, faults, read

from sitegen.score.pitch import Pitch

STANDARD = "E2 A2 D3 G3 B3 E4"


def open_strings(head: str, count: int) -> list[int]:
    """Return the MIDI numbers of a part's open strings, lowest first."""
    part = head.split(":", maxsplit=1)[0]
    beats = " ".join(str(beat) for beat in range(1, count + 1))
    rows = "\n".join(
        f"{string} | {'--' * (count - string)}0{'--' * (string - 1)}-|"
        for string in range(1, count + 1)
    )
    text = f"meter: {count}/4\n{head}\n\ncount | {beats} |\n{part}\n"
    text += rows.replace(" |", "     |")
    chart = chart_of(read(text))
    return [note.midi or 0 for event in chart.parts[0].voices[0] for note in event.notes]


# Names in use among players: common practice, no source. Pitches: open strings of the usual
# handbook tunings, lowered as the name says.
@pytest.mark.parametrize(
    ("head", "sounding"),
    [
        ("guitar: Standard tuning", STANDARD),
        ("guitar: EADGBE", STANDARD),
        ("guitar: six-string, standard", STANDARD),
        ("guitar: tuned down a half step", "E♭2 A♭2 D♭3 G♭3 B♭3 E♭4"),
        ("guitar: 1/2 step down", "E♭2 A♭2 D♭3 G♭3 B♭3 E♭4"),
        ("guitar: a whole step down", "D2 G2 C3 F3 A3 D4"),
        ("guitar: Drop-D tuning", "D2 A2 D3 G3 B3 E4"),
        ("guitar: C G C F A D", "C2 G2 C3 F3 A3 D4"),
        ("guitar: drop d, capo 2", "E2 B2 E3 A3 C♯4 F♯4"),
        ("lead: standard", STANDARD),
        ("guitar: 7-string", f"B1 {STANDARD}"),
        ("guitar: 7-string drop A", f"A1 {STANDARD}"),
        ("guitar: eight-string", f"F♯1 B1 {STANDARD}"),
        ("bass: 5-string", "B0 E1 A1 D2 G2"),
        ("bass: six-string, half-step down", "B♭0 E♭1 A♭1 D♭2 G♭2 C♭3"),
    ],
)
def test_a_tuning_is_read_as_players_say_it(head: str, sounding: str) -> None:
    pitches = [Pitch.read(word) for word in sounding.split()]
    assert open_strings(head, len(pitches)) == [pitch.midi for pitch in pitches]


@pytest.mark.parametrize(
    ("value", "faulty"),
    [
        ("drop Q", "drop Q"),
        ("D2 A2 D3 H3 B3 E4", "H3"),
        ("E4 B3 G3 D3 A2 E2", "B3"),
        ("standard, capo x", "x"),
        ("standard, capo 15", "15"),
        ("standard, cappo 2", "cappo 2"),
        ("standard, reads in H", "H"),
    ],
)
def test_the_very_word_is_reported(value: str, faulty: str) -> None:
    text = f"guitar: {value}\n\ncount | 1 2 3 4 |\nguitar\n  1   | 0-------|"
    column = 9 + value.index(faulty)
    assert faults(read(text)) == [f"instrument 1:{column}-{column + len(faulty)}"]
