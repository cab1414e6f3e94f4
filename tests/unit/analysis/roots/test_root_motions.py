"""How roots move: tallies, chains, tritones, semitones, common tones."""

import pytest
from unit.analysis.roots.facts_aloud import bars_of, found, played, progression, texts

from sitegen.analysis.reading import ChartReading
from sitegen.analysis.roots import find_root_motions


def test_motions_are_tallied_the_commonest_first() -> None:
    facts = texts(find_root_motions, progression("| C | Am | Dm7 | G7 | C | Cmaj7 | F |"))
    assert facts["root-motions"] == "up a fourth 4, down a minor third 1"
    assert facts["fifth-falls"] == "4"
    assert facts["fifth-fall-share"] == "80 %"


def test_the_same_root_again_is_no_motion_and_silence_is_read_across() -> None:
    facts = texts(find_root_motions, progression("| C | C7 | N.C. | F | C/E |"))
    assert facts["root-motions"] == "up a fourth 1, down a fourth 1"


@pytest.mark.parametrize("bars", ["| C | Cmaj7 | C7 |", "| N.C. |", "| C |"])
def test_a_single_root_has_no_facts(bars: str) -> None:
    assert find_root_motions(progression(bars)) == ()


def test_drums_alone_have_no_facts() -> None:
    reading = played("""
        count | 1   2   3   4   |
        drums
          SD  | ----x-------x---|
    """)
    assert find_root_motions(reading) == ()


def test_the_descending_fifths_sequence_goes_through_the_scale() -> None:
    # The circle-of-fifths progression i iv VII III VI ii° V i, with its one diminished fifth:
    # Kostka and Payne, Tonal Harmony, the chapter on harmonic progression; Aldwell and Schachter
    # on sequences (from memory).
    facts = found(
        find_root_motions,
        progression("| Am | Dm | G | C | F | Bdim | E | Am |", "A minor"),
    )
    assert facts["falling-fifths"].value == 8
    assert facts["falling-fifths"].sentence == (
        "Bars 1 to 8: the roots fall by fifths, A D G C F B E A."
    )
    assert facts["tritone-root-motions"].value == 1
    assert facts["tritone-root-motions"].sentence == ""


def test_a_chain_does_not_end_with_a_diminished_fifth() -> None:
    facts = texts(find_root_motions, progression("| G | C | F | B | D |"))
    assert facts["falling-fifths"] == "3"


def test_two_chains_are_told_apart() -> None:
    reading = progression("| E7 | A7 | D7 | G7 | F | D7 | G7 | C7 | F |")
    fact = found(find_root_motions, reading)["falling-fifths"]
    assert fact.sentence == (
        "Bars 1 to 4: the roots fall by fifths, E A D G. "
        "Bars 6 to 9: the roots fall by fifths, D G C F."
    )
    assert bars_of(fact) == [1, 2, 3, 4]


def test_a_chain_of_three_is_a_fact_without_a_sentence() -> None:
    fact = found(find_root_motions, progression("| Dm7 | G7 | C |"))["falling-fifths"]
    assert (fact.text, fact.sentence) == ("3", "")


def test_plagal_chains_fall_by_fourths() -> None:
    # C G D A E, rock's plagal chain: Everett, The Foundations of Rock (from memory).
    facts = found(find_root_motions, progression("| C G | D A | E | E |", "E major"))
    assert facts["falling-fourths"].sentence == (
        "Bars 1 to 3: the roots fall by fourths, C G D A E."
    )
    assert facts["fourth-falls"].value == 4
    assert "fifth-falls" not in facts


def test_a_tritone_outside_the_key_is_told() -> None:
    facts = found(find_root_motions, progression("| E5 | Bb5 | A5 |", "E minor"))
    assert facts["tritone-root-motions"].sentence == (
        "Bar 2: the root moves a tritone, from E to B♭."
    )
    assert facts["semitone-root-motions"].sentence == (
        "Bar 3: B♭5 to A5, the same kind of chord a semitone lower."
    )


@pytest.mark.parametrize(
    ("bars", "key"), [("| Am | F | E |", "A minor"), ("| C | Em | Fmaj7 |", "C major")]
)
def test_a_semitone_inside_the_key_or_between_unlike_chords_is_not_told(
    bars: str, key: str
) -> None:
    assert found(find_root_motions, progression(bars, key))["semitone-root-motions"].sentence == ""


def test_no_motion_leads_from_the_first_ending_to_the_second() -> None:
    reading = progression("|: C | F |(1.) C | B7 :|(2.) Bb | C |")
    assert texts(find_root_motions, reading)["root-motions"] == (
        "up a fourth 2, down a fourth 1, down a semitone 1, up a whole tone 1"
    )


def test_a_note_in_all_chords_of_a_stretch_is_told() -> None:
    reading = progression("| Em7 | G | Dsus4 | A7sus4 | F |")
    fact = found(find_root_motions, reading)["common-tone"]
    assert fact.text == "D and G"
    assert fact.sentence == "Bars 1 to 4: D and G are in every chord, Em7, G, Dsus4 and A7sus4."


def test_a_pedal_is_no_common_tone() -> None:
    reading = progression("| C | F/C | Am/C | Dm7/C |")
    assert "common-tone" not in texts(find_root_motions, reading)


def third_motions(bars: str, key: str) -> dict[str, str]:
    """Return the facts on thirds alone."""
    reading: ChartReading = progression(bars, key)
    facts = texts(find_root_motions, reading)
    kinds = ("chromatic-mediants", "doubly-chromatic-mediants", "diatonic-thirds")
    return {kind: facts[kind] for kind in kinds if kind in facts}


@pytest.mark.parametrize(
    ("bars", "kind"),
    [
        # The four chromatic mediants of C major, and those of A minor: Kostka and Payne, Tonal
        # Harmony, and Kopp, Chromatic Transformations (from memory).
        ("| C | Ab |", "chromatic-mediants"),
        ("| C | Eb |", "chromatic-mediants"),
        ("| C | E |", "chromatic-mediants"),
        ("| C | A |", "chromatic-mediants"),
        ("| Am | Cm |", "chromatic-mediants"),
        ("| Am | C#m |", "chromatic-mediants"),
        ("| Am | Fm |", "chromatic-mediants"),
        ("| Am | F#m |", "chromatic-mediants"),
        ("| C | Ebm |", "doubly-chromatic-mediants"),
        ("| C | Abm |", "doubly-chromatic-mediants"),
        ("| C | Em |", "diatonic-thirds"),
        ("| C | Am |", "diatonic-thirds"),
    ],
)
@pytest.mark.parametrize("key", ["C major", ""])
def test_triads_a_third_apart_are_told_apart(bars: str, kind: str, key: str) -> None:
    assert third_motions(bars, key) == {kind: "1"}


@pytest.mark.parametrize(
    ("bars", "key"),
    [
        ("| C | E7 | Am |", "C major"),
        ("| C | E | Am |", "C major"),
        ("| C | A7 | Dm7 | G7 |", "C major"),
        ("| C | A7 | D7 |", ""),
        ("| C | E | Am |", ""),
        ("| Am | C | E | Am |", "A minor"),
        ("| C | E |", "A minor"),
        ("| Fm7 | Abm6 |", "Eb major"),
        ("| A7 | Cm6 |", "G major"),
        ("| C5 | Ab5 |", "C major"),
        ("| Caug | Eaug |", "C major"),
    ],
)
def test_dominants_and_close_relatives_are_no_chromatic_mediants(bars: str, key: str) -> None:
    assert not {"chromatic-mediants", "doubly-chromatic-mediants"} & set(third_motions(bars, key))


@pytest.mark.parametrize(
    ("bars", "note"),
    [("| G | Eadd2 |", "B"), ("| Cadd2 | Aadd2 |", "E"), ("| G/B | Eadd2/G# |", "B")],
)
def test_an_added_second_hides_no_common_note(bars: str, note: str) -> None:
    fact = found(find_root_motions, progression(bars, "C major"))["chromatic-mediants"]

    assert fact.sentence.endswith(f"with one note in common, {note}.")


def test_a_chromatic_mediant_is_told_with_its_common_note() -> None:
    fact = found(find_root_motions, progression("| C | Ab | C |", "C major"))["chromatic-mediants"]
    assert fact.sentence == (
        "Bar 2: C to A♭, a chromatic mediant: two major triads a major third apart with one "
        "note in common, C. "
        "Bar 3: A♭ to C, a chromatic mediant: two major triads a major third apart with one "
        "note in common, C."
    )
    assert bars_of(fact) == [2, 3]
