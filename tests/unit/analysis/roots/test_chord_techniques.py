"""Applied and borrowed chords, kinds of chord, cadences, harmonic rhythm."""

import pytest
from unit.analysis.roots.facts_aloud import bars_of, found, played, progression, texts

from sitegen.analysis.chord_techniques import find_chord_techniques


def test_applied_dominants_are_told_with_where_they_lead() -> None:
    bars = "| Eb | G7/D | Cm | Eb7/Bb | Ab | Abm6 | Eb/Bb | F7 Bb7 |"
    facts = found(find_chord_techniques, progression(bars, "Eb major"))
    assert facts["applied-dominants"].value == 3
    assert facts["applied-dominants-resolved"].value == 3
    assert facts["applied-dominants"].sentence == (
        "Applied dominants: G7/D (V43/vi) to Cm in bar 2, E♭7/B♭ (V43/IV) to A♭ in bar 4 and "
        "F7 (V7/V) to B♭7 in bar 8."
    )
    assert bars_of(facts["applied-dominants"]) == [2, 4, 8]


def test_an_applied_dominant_that_goes_elsewhere_is_told() -> None:
    facts = found(find_chord_techniques, progression("| C | D7 | F | C |", "C major"))
    assert facts["applied-dominants"].sentence == "Bar 2: D7 (V7/V) goes to F and not to G."
    assert "applied-dominants-resolved" not in facts


def test_a_suspended_applied_dominant_is_one_with_its_resolution() -> None:
    facts = texts(find_chord_techniques, progression("| C | A7sus4 A7 | Dm | G |", "C major"))
    assert facts["applied-dominants"] == "1"


def test_the_two_of_an_applied_dominant_is_none_itself() -> None:
    facts = texts(find_chord_techniques, progression("| C | Gm7 | C7 | F | C |", "C major"))
    assert facts["applied-dominants"] == "1"


def test_a_tritone_substitute_is_told_with_the_dominant_it_stands_for() -> None:
    # ii7 ♭II7 I: Levine, The Jazz Theory Book, the chapter on reharmonization (from memory).
    facts = found(find_chord_techniques, progression("| Dm7 | Db7 | Cmaj7 |", "C major"))
    assert facts["tritone-substitutes"].sentence == (
        "Bar 2: D♭7 is a tritone substitute. It stands for G7 and falls a semitone to Cmaj7."
    )


@pytest.mark.parametrize("symbol", ["Fm", "Fm6", "Ab", "Eb", "Dm7b5", "Cm", "Abmaj7", "Bdim7"])
def test_chords_of_the_parallel_minor_are_borrowed(symbol: str) -> None:
    # The borrowed chords in major of Kostka and Payne, the chapter on mode mixture (from memory).
    facts = found(find_chord_techniques, progression(f"| C | {symbol} | C |", "C major"))
    assert facts["borrowed-chords"].value == 1
    assert facts["borrowed-chords"].sentence.startswith("Borrowed from C minor: ")


def test_flat_seven_may_come_from_the_mixolydian_too() -> None:
    facts = found(find_chord_techniques, progression("| C | Bb | F | C | Fm | C |", "C major"))
    assert facts["borrowed-chords"].sentence == (
        "Borrowed from C minor or mixolydian: B♭ (♭VII) in bar 2. "
        "Borrowed from C minor: Fm (iv) in bar 5."
    )


@pytest.mark.parametrize(
    ("bars", "key"),
    [
        ("| C7 | F7 | C7 | G7 | C7 |", "C major"),
        ("| C | G7b9 | C |", "C major"),
        ("| C | A7 | Dm | G |", "C major"),
        ("| C | Bb | F | C |", "C mixolydian"),
        ("| Cm | F | Bb | G7 | Cm |", "C minor"),
        ("| C | F#7 | B | C |", "C major"),
        ("| Bb7 | Fm7 | Bb7 | Eb7 |", "Bb major"),
        ("| C | Bb | Ab | Fm |", ""),
    ],
)
def test_other_chords_are_not_borrowed(bars: str, key: str) -> None:
    assert "borrowed-chords" not in texts(find_chord_techniques, progression(bars, key))


def test_the_neapolitan_leads_to_the_dominant() -> None:
    # i N6 V7 i: Kostka and Payne, the chapter on the Neapolitan (from memory).
    facts = found(find_chord_techniques, progression("| Cm | Db/F | G7 | Cm |", "C minor"))
    assert facts["neapolitan"].sentence == (
        "Bar 2: D♭/F, the major chord on the lowered second degree, is a Neapolitan on its way "
        "to G7."
    )
    assert "borrowed-chords" not in facts


@pytest.mark.parametrize(
    ("after", "is_neapolitan"),
    [("Cm/G", True), ("F#dim7", True), ("D7", True), ("Cm", False), ("Gm", False), ("Ab", False)],
)
def test_the_flat_two_alone_is_no_neapolitan(after: str, is_neapolitan: bool) -> None:
    facts = texts(find_chord_techniques, progression(f"| Cm | Db/F | {after} |", "C minor"))
    assert ("neapolitan" in facts) is is_neapolitan


def test_augmented_sixths_have_their_names() -> None:
    facts = found(find_chord_techniques, progression("| Cm | Ab7 | G | Cm |", "C minor"))
    assert facts["augmented-sixths"].sentence == "Bar 2: A♭7 before G is a German augmented sixth."
    assert "applied-dominants" not in facts


def test_a_picardy_third_ends_a_minor_chart() -> None:
    facts = found(find_chord_techniques, progression("| Cm | Fm | G7 | C |", "C minor"))
    assert (
        facts["picardy-third"].sentence == "Bar 4: the last chord, C, is major, a Picardy third."
    )
    assert "borrowed-chords" not in facts


@pytest.mark.parametrize(
    ("bars", "key", "name"),
    [
        # The cadences of Kostka and Payne, Tonal Harmony (from memory), then those of rock and
        # jazz teaching.
        ("| C | F | G7 | C |", "C major", "authentic"),
        ("| Cm | Fm | G | Cm |", "C minor", "authentic"),
        ("| C | F | Bdim | C |", "C major", "authentic"),
        ("| C | Dm | G7sus4 G7 |", "C major", "half"),
        ("| C | F | C/G G |", "C major", "half"),
        ("| C | G | F | C |", "C major", "plagal"),
        ("| C | G | Fm | C |", "C major", "plagal"),
        ("| C | F | G7 | Am |", "C major", "deceptive"),
        ("| Cm | Fm | G7 | Ab |", "C minor", "deceptive"),
        ("| Cm | Cm | Fm/Ab | G |", "C minor", "Phrygian half"),
        ("| C | Fm7 | Bb7 | Cmaj7 |", "C major", "backdoor"),
        ("| Am | F | G | Am |", "A minor", "subtonic"),
        ("| C | Bb | F | C |", "C major", "double plagal"),
    ],
)
def test_the_last_chords_make_a_cadence(bars: str, key: str, name: str) -> None:
    assert texts(find_chord_techniques, progression(bars, key))["cadence"] == name


@pytest.mark.parametrize(
    ("bars", "key"),
    [
        ("| C |", "C major"),
        ("| Cm | Gm | Cm |", "C minor"),
        ("| C | F/C | C |", "C major"),
        ("| C5 | G5 | C5 |", "C major"),
        ("| C | Dm | Em |", "C major"),
        ("| F | G7 | C/E |", "C major"),
        ("| F | G | C |", ""),
    ],
)
def test_other_endings_have_no_name(bars: str, key: str) -> None:
    assert "cadence" not in texts(find_chord_techniques, progression(bars, key))


def test_sections_end_with_cadences_too() -> None:
    reading = progression("Verse | C | F | C | G |\nChorus | C | F | G | C |", "C major")
    facts = texts(find_chord_techniques, reading)
    assert facts["cadences"] == "half in bar 4, authentic in bar 8"
    assert facts["cadence"] == "authentic"


def test_kinds_of_chord_are_shares_of_the_changes() -> None:
    facts = texts(find_chord_techniques, progression("| C5 | Fsus2 | G7 | G7 | Am/C | D/C |"))
    assert facts == {
        "roots": "5",
        "power-chord-share": "20 %",
        "suspended-share": "20 %",
        "third-less-share": "40 %",
        "seventh-chord-share": "20 %",
        "inversion-share": "40 %",
        "inversions": "2",
        "harmonic-rhythm": "0.83",
    }


def test_a_bass_that_is_no_member_is_foreign() -> None:
    facts = texts(find_chord_techniques, progression("| C/D | G |"))
    assert facts["foreign-basses"] == "1"
    assert "inversions" not in facts


def test_chords_without_a_third_are_told_when_they_are_all_there_is() -> None:
    facts = found(find_chord_techniques, progression("| C#5 | Asus2 | Esus2 | Bsus2 |"))
    assert facts["third-less-share"].sentence == "None of the four chords has a third."
    mixed = found(find_chord_techniques, progression("| C#5 | Asus2 | Esus2 | B |"))
    assert mixed["third-less-share"].sentence == ""


def test_harmonic_rhythm_counts_changes_a_sounding_bar() -> None:
    facts = found(find_chord_techniques, progression("| C | C | F G | N.C. | C |"))
    assert (facts["harmonic-rhythm"].text, facts["harmonic-rhythm"].unit) == ("1", "chord a bar")


def test_a_harmonic_rhythm_that_quickens_is_told() -> None:
    bars = "| C | Am | F | G | C | Am | F G | C G |"
    fact = found(find_chord_techniques, progression(bars))["harmonic-rhythm"]
    assert fact.sentence == "One chord a bar in bars 1 to 6, two in bars 7 and 8."
    even = found(find_chord_techniques, progression("| C | Am F | F G | C |"))
    assert even["harmonic-rhythm"].sentence == ""


def test_pushes_come_ahead_of_the_bar() -> None:
    reading = played("""
        count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
        chord  | C                           F   |                             G   |

        count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
        chord  |                                 | C                               |
    """)
    facts = found(find_chord_techniques, reading)
    assert facts["pushes"].value == 2
    assert facts["pushes"].sentence == (
        "In bars 2 and 3 the chord comes an eighth ahead of the bar."
    )
    assert [f"{p.bar}.{p.beat}" for p in facts["pushes"].evidence] == ["1.9/2", "2.9/2"]
    assert facts["harmonic-rhythm"].text == "1"
    assert facts["harmonic-rhythm"].sentence == ""


@pytest.mark.parametrize("bars", ["| N.C. |", "| N.C. | N.C. |"])
def test_a_chart_without_chords_has_no_facts(bars: str) -> None:
    assert find_chord_techniques(progression(bars, "C major")) == ()
