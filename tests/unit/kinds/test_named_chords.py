"""Which words of a sentence are chord symbols: pitches look like them."""

import pytest

from sitegen.harmony.qualities import QUALITIES
from sitegen.kinds.named_chords import named_chords


@pytest.mark.parametrize(
    ("sentence", "symbols"),
    [
        ("Applied dominants: G7/D (V43/vi) to Cm and E♭7/B♭.", ["G7/D", "Cm", "E♭7/B♭"]),
        ("The chords end open, on Bm7♭5.", ["Bm7♭5"]),
        ("Borrowed from E♭ minor: A♭m6 (ivadd6) in bar 6.", ["A♭m6"]),
        ("Example 4 ends as Bars 5 to 8 do; A bar, Dorian and German too.", []),
        ("The voice leaves E♭ major twice: D♭5, then C7 and G4.", []),
    ],
)
def test_symbols_are_found_and_words_are_not(sentence: str, symbols: list[str]) -> None:
    assert [str(chord) for chord in named_chords(sentence)] == symbols


def test_a_pitch_is_a_chord_where_no_such_note_is_spoken_of() -> None:
    sentence = "The voice leaps up to D♭5 over C7 and A5."
    assert [str(chord) for chord in named_chords(sentence, {"D♭5", "C5"})] == ["C7", "A5"]
    assert [str(chord) for chord in named_chords(sentence, ())] == ["D♭5", "C7", "A5"]


@pytest.mark.parametrize("quality", [each.name for each in QUALITIES if each.named and each.name])
def test_every_quality_is_found(quality: str) -> None:
    assert [str(chord) for chord in named_chords(f"to B♭{quality}, then", ())] == [f"B♭{quality}"]
