"""What the bass does: written after slashes, and played."""

import pytest
from unit.analysis.roots.facts_aloud import bars_of, found, played, progression, texts

from sitegen.analysis.bass import find_bass_motions


def test_a_written_bass_goes_the_smaller_way_round() -> None:
    facts = texts(find_bass_motions, progression("| C | G/B | Am | C/G | F | Dm | G7 |"))
    assert facts["bass-line"] == "C B A G F D G"
    assert facts["bass-motions"] == (
        "down a whole tone 3, down a semitone 1, down a minor third 1, up a fourth 1"
    )


def test_symbols_without_a_slash_have_no_line_of_their_own() -> None:
    facts = texts(find_bass_motions, progression("| C | F | G | C |"))
    assert facts == {}


def test_a_scale_down_is_told_with_where_it_comes_again() -> None:
    reading = progression("| C G/B | Am C/G | F | G | C G/B | Am C/G | F | G |", "C major")
    fact = found(find_bass_motions, reading)["bass-descent"]
    assert fact.value == 5
    assert fact.sentence == "Bars 1 to 3: the bass falls by step, C B A G F, and again from bar 5."
    assert bars_of(fact) == [1, 1, 2, 2, 3]


def test_a_scale_up_is_told() -> None:
    fact = found(find_bass_motions, progression("| C | Dm7 | C/E | F | C |"))["bass-ascent"]
    assert fact.sentence == "Bars 1 to 4: the bass rises by step, C D E F."


def test_a_descent_by_semitones_is_told_as_such() -> None:
    facts = found(find_bass_motions, progression("| F | C/E | Ebmaj7 | Dm7 | G7 |"))
    assert facts["chromatic-bass-descent"].text == "4"
    assert facts["bass-descent"].sentence == (
        "Bars 1 to 4: the bass falls by semitones, F E E♭ D."
    )


def test_a_descent_that_turns_chromatic_is_told_with_its_semitones() -> None:
    bars = "| Cm | Cm/Bb | Am7b5 | Abmaj7 | Eb/G | Gbdim7 | Fm7 | Bb7 |"
    fact = found(find_bass_motions, progression(bars, "Eb major"))["bass-descent"]
    assert fact.sentence == (
        "Bars 1 to 7: the bass falls by step, C B♭ A A♭ G G♭ F, by semitones from B♭ to F."
    )


def test_three_notes_are_no_line() -> None:
    assert "bass-descent" not in texts(find_bass_motions, progression("| C | G/B | Am | E |"))


@pytest.mark.parametrize(
    ("bars", "key", "kind"),
    [
        # The ground of Dido's lament (Purcell, Dido and Aeneas, 1689): G F♯ F E E♭ D.
        ("| Gm | D/F# | Dm/F | C/E | Cm/Eb | D | Gm |", "G minor", "chromatic"),
        ("| Am | G | F | E |", "A minor", "diatonic"),
        ("| Am | Em/G | Dm/F | E |", "A minor", "diatonic"),
        ("| Am | E/G# | G | F | E |", "A minor", "partly chromatic"),
        ("| Am | C/G | D/F# | F | E |", "A dorian", "partly chromatic"),
    ],
)
def test_the_lament_bass_goes_from_1_to_5_in_minor(bars: str, key: str, kind: str) -> None:
    facts = found(find_bass_motions, progression(bars, key))
    assert facts["lament-bass"].value == kind
    assert facts["lament-bass"].sentence
    assert facts["bass-descent"].sentence == ""


def test_a_fall_that_goes_a_little_beyond_the_lament_is_told_once() -> None:
    facts = found(find_bass_motions, progression("| Am | G | F | E | Dm |", "A minor"))
    assert facts["lament-bass"].sentence
    assert (facts["bass-descent"].text, facts["bass-descent"].sentence) == ("5", "")


@pytest.mark.parametrize(
    ("bars", "key"),
    [
        ("| C | Bb | Ab | G |", "C major"),
        ("| Am | G | F | C |", "A minor"),
        ("| Am | G | F | E |", ""),
        ("| Dm | C | Bb | Am |", "A minor"),
        ("| Am | G | F# | E |", "A minor"),
    ],
)
def test_other_descents_are_no_lament(bars: str, key: str) -> None:
    assert "lament-bass" not in texts(find_bass_motions, progression(bars, key))


def test_a_tonic_pedal_is_told_with_the_chord_that_lacks_its_note() -> None:
    facts = found(find_bass_motions, progression("| D | G/D | A/D | D | Em |", "D major"))
    assert facts["pedal-bass"].value == 4
    assert facts["pedal-bass"].sentence == (
        "Bars 1 to 4: a tonic pedal on D under D, G/D and A/D; A has no D."
    )
    assert facts["pedal-bass-foreign"].text == "1"
    assert bars_of(facts["pedal-bass-foreign"]) == [3]


def test_a_dominant_pedal_is_told() -> None:
    facts = found(find_bass_motions, progression("| G | F/G | C/G | Dm/G | G7 |", "C major"))
    assert facts["pedal-bass"].sentence == (
        "Bars 1 to 5: a dominant pedal on G under G, F/G, C/G, Dm/G and G7; F and Dm have no G."
    )


@pytest.mark.parametrize("bars", ["| C | Cmaj7 | C7 | C |", "| C | F/C |", "| C | F/C | F/C |"])
def test_a_bass_that_stays_under_one_root_or_one_change_is_no_pedal(bars: str) -> None:
    assert "pedal-bass" not in texts(find_bass_motions, progression(bars))


def test_silence_ends_a_pedal() -> None:
    facts = texts(find_bass_motions, progression("| C | F/C | N.C. | G/C | C |"))
    assert "pedal-bass" not in facts


@pytest.mark.parametrize(
    ("bars", "degrees", "said"),
    [
        ("| Am | Ammaj7 | Am7 | Am6 |", "R 7 ♭7 6", "A G♯ G F♯ falls by semitones."),
        (
            "| Am | Ammaj7/G# | Am7/G | Am6/F# |",
            "R 7 ♭7 6",
            "A G♯ G F♯ falls by semitones in the bass.",
        ),
        ("| C | C+ | C6 | C7 |", "5 ♯5 6 ♭7", "G G♯ A B♭ rises by semitones."),
        ("| C | Cmaj7 | C7 | F |", "R 7 ♭7", "C B B♭ falls by semitones."),
        ("| Dsus4 | D | Dm | A |", "4 3 ♭3", "G F♯ F falls by semitones."),
    ],
)
def test_a_line_cliche_moves_inside_one_chord(bars: str, degrees: str, said: str) -> None:
    # The first two are the usual examples of contrapuntal elaboration of static harmony: Coker,
    # Elements of the Jazz Language (from memory).
    fact = found(find_bass_motions, progression(bars))["line-cliche"]
    assert fact.value == degrees
    assert fact.sentence.endswith(said)


@pytest.mark.parametrize(
    "bars",
    [
        "| Am | Am7 | Am6 | Am |",
        "| Am | Ammaj7 | Am |",
        "| Dsus4 | D | Dsus4 | D |",
        "| Am | Ammaj7 | N.C. | Am7 |",
        "| C | Cmaj7 | F7 |",
    ],
)
def test_other_changes_inside_one_chord_are_no_line_cliche(bars: str) -> None:
    assert "line-cliche" not in texts(find_bass_motions, progression(bars))


PLAYED = """
    key: A minor
    count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
    chord  | Am              E7/G#           | Am7/G           D7/F#       F   |
    bass   | A1      E2      r       G#1     | G1              F#1             |

    count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
    chord  |                 E7              | Am              N.C.            |
    bass   | F1              E1              | A1              A1              |
"""


def test_a_played_bass_is_told_from_its_notes() -> None:
    facts = found(find_bass_motions, played(PLAYED))
    assert facts["bass.bass-line"].text == "A G♯ G F♯ F E A"
    assert facts["bass.bass-motions"].text == "down a semitone 5, up a fourth 1"
    assert facts["bass.lament-bass"].sentence == (
        "Bars 1 to 3, bass: the lament bass, A G♯ G F♯ F E, by semitones from 1 down to 5 "
        "in minor."
    )
    assert facts["lament-bass"].sentence == ""


def test_a_played_bass_names_its_notes_and_where_they_start() -> None:
    fact = found(find_bass_motions, played(PLAYED))["bass.bass-line"]
    # E7/G♯ stands on 3 of bar 1, its bass on 4; F on the & of 4 in bar 2, its bass on 1 of bar 3.
    assert [f"{p.bar}.{p.beat}" for p in fact.evidence] == [
        *("1.1", "1.4", "2.1", "2.3", "3.1", "3.3", "4.1")
    ]


def test_a_played_line_must_really_move_by_step() -> None:
    reading = played("""
        count  | 1       2       3       4       |
        chord  | C       G/B     Am      G       |
        bass   | C2      B2      A1      G1      |
    """)
    facts = found(find_bass_motions, reading)
    assert facts["bass-descent"].sentence == ""
    assert "bass.bass-descent" not in facts
    assert facts["bass.bass-motions"].text == (
        "up a major seventh 1, down an octave and a major second 1, down a whole tone 1"
    )


def test_a_played_pedal_under_symbols_without_a_slash_is_found() -> None:
    reading = played("""
        key: A major
        count  | 1       2       3       4       | 1       2       3       4       |
        chord  | A               D               | E               A               |
        bass   | A1      A1      A1      A1      | A1      A1      A1      A1      |
    """)
    facts = found(find_bass_motions, reading)
    assert facts["bass.pedal-bass"].sentence == (
        "Bars 1 and 2, bass: a tonic pedal on A under A, D and E; E has no A."
    )
    assert "pedal-bass" not in facts


@pytest.mark.parametrize("name", ["double bass", "bass"])
def test_a_bass_is_known_by_its_name(name: str) -> None:
    reading = played(f"""
        count       | 1       2       3       4       |
        chord       | C               F               |
        {name:11} | C2              F2              |
    """)
    prefix = name.replace(" ", "-")
    assert texts(find_bass_motions, reading)[f"{prefix}.bass-motions"] == "up a fourth 1"


def test_a_bass_that_rests_under_all_chords_but_one_has_no_line() -> None:
    reading = played("""
        count  | 1       2       3       4       |
        chord  | C               F       G       |
        bass   | C2      r                       |
    """)
    assert texts(find_bass_motions, reading) == {}


def test_a_pedal_in_the_top_is_found_in_a_part_that_plays_chords() -> None:
    reading = played("""
        count  | 1       2         3         4         | 1         2         3         4         |
        chord  | C                 Fmaj7               | Am                  G                   |
        keys   | E4,G4,E5          F4,A4,E5            | E4,A4,E5            D4,G4,D5            |
        voice  | E5                E5                  | E5                  D5                  |
    """)
    facts = found(find_bass_motions, reading)
    assert facts["keys.top-pedal"].value == 3
    assert facts["keys.top-pedal"].sentence == (
        "Bars 1 and 2, keys: E5 stays on top of C, Fmaj7 and Am."
    )
    assert "voice.top-pedal" not in facts


def test_a_held_top_note_counts_under_every_chord() -> None:
    reading = played("""
        count  | 1       2       3       4       |
        chord  | C       F       Am      C       |
        keys   | E4,C5                           |
    """)
    assert texts(find_bass_motions, reading)["keys.top-pedal"] == "4"
