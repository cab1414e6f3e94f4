"""The spellings of songbooks, fake books and session charts, and what is refused of them.

The table says where it comes from: common practice, no source.
"""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.diagnostics import CATALOGUE
from sitegen.harmony import ChordSymbolError, read_chord
from sitegen.score.chord import Chord, NoChord

TABLE = json.loads((Path(__file__).parent / "chord_spellings.json").read_text(encoding="utf-8"))
SPELLINGS = [
    (spelling, degrees) for degrees, spelled in TABLE["degrees"].items() for spelling in spelled
]
SLASHES = [
    (spelling, printed) for printed, spelled in TABLE["slash"].items() for spelling in spelled
]
ROOTS = st.builds(
    str.__add__, st.sampled_from("ABCDEFG"), st.sampled_from(["", "b", "♭", "#", "♯"])
)
# An accidental belongs to the root as long as it can, so these begin with a letter or bracket.
ON_ANY_ROOT = [(s[1:], d) for s, d in SPELLINGS if s[1:2] not in {"-", "−", "–"}]


def test_the_table_is_as_long_as_the_practice_is_wide() -> None:
    assert len(SPELLINGS) + len(SLASHES) + len(TABLE["no_chord"]) > 400
    assert len({spelling for spelling, _ in SPELLINGS}) == len(SPELLINGS)


@pytest.mark.parametrize(("spelling", "degrees"), SPELLINGS)
def test_a_spelling_is_read_as_players_read_it(spelling: str, degrees: str) -> None:
    chord = read_chord(spelling)

    assert set(chord.degrees) == set(degrees.split())
    assert read_chord(str(chord)) == chord


@pytest.mark.parametrize(("spelling", "printed"), SLASHES)
def test_a_slash_is_read_with_every_quality(spelling: str, printed: str) -> None:
    assert str(read_chord(spelling)) == printed


@pytest.mark.parametrize("spelling", TABLE["no_chord"])
def test_no_chord_is_read_in_all_its_forms(spelling: str) -> None:
    assert read_chord(spelling) == NoChord()


@given(ROOTS, st.sampled_from(ON_ANY_ROOT))
def test_a_spelling_means_the_same_on_every_root(root: str, spelled: tuple[str, str]) -> None:
    spelling, degrees = spelled
    chord = read_chord(root + spelling)

    assert isinstance(chord, Chord)
    assert str(chord.root) == root.replace("b", "♭").replace("#", "♯")
    assert set(chord.degrees) == set(degrees.split())
    assert read_chord(str(chord)) == chord


@pytest.mark.parametrize(
    ("text", "code", "faulty", "hint"),
    # Common practice, no source: what people type that is no chord symbol here.
    [
        ("", "chord-root", "", "a chord starts with its root, A to G"),
        ("am7", "chord-root", "a", 'did you mean "Am7"?'),
        ("f#m", "chord-root", "f", 'did you mean "F#m"?'),
        ("H7", "chord-root", "H", "the German H is written B here"),
        ("hm", "chord-root", "h", "the German H is written B here"),
        ("Es", "chord-root", "Es", "the German Es is written Eb here"),
        ("As7", "chord-root", "As", "the German As is written Ab here"),
        ("Des", "chord-root", "Des", "the German Des is written Db here"),
        ("Fism7", "chord-root", "Fis", "the German Fis is written F# here"),
        ("Cis", "chord-root", "Cis", "the German Cis is written C# here"),
        ("Sol7", "chord-root", "S", "roots are letters here: Sol is G"),
        ("Lam", "chord-root", "L", "roots are letters here: La is A"),
        ("♯C", "chord-root", "♯", "a chord starts with its root, A to G"),
        ("?", "chord-root", "?", "a chord starts with its root, A to G"),
        ("Cmajj7", "chord-quality", "majj7", 'did you mean "maj7"?'),
        ("Cnim", "chord-quality", "nim", None),
        ("Csuss", "chord-alteration", "suss", 'did you mean "sus4"?'),
        ("Cadd", "chord-quality", "add", 'did you mean "add9"?'),
        ("C7(b9,#12)", "chord-alteration", "#12", None),
        ("C7b", "chord-alteration", "b", None),
        ("C7(maj7)", "chord-alteration", "maj7", ""),
        ("Cm(add3)", "chord-alteration", "add3", ""),
        ("Cno9", "chord-alteration", "no9", ""),
        ("C7(b9", "chord-bracket", "(", "close it with ) in the same symbol"),
        ("C7b9)", "chord-bracket", ")", None),
        ("C(", "chord-bracket", "(", None),
        ("C/H", "chord-bass", "H", None),
        ("C/", "chord-bass", "/", "name the bass, C/E, or leave the slash out"),
        ("C/e", "chord-bass", "e", 'did you mean "E"?'),
        ("D/C7", "chord-bass", "C7", None),
        ("D/Gm", "chord-bass", "Gm", None),
        ("Bbb5", "chord-two-ways", "Bbb5", 'write "Bb(b5)" or "B♭♭5"'),
        ("C-5", "chord-two-ways", "C-5", 'write "C(b5)" or "Cm"'),
        ("F#-5", "chord-two-ways", "F#-5", 'write "F#(b5)" or "F#m"'),
    ],
)
def test_what_is_no_symbol_is_refused_at_its_place(
    text: str, code: str, faulty: str, hint: str | None
) -> None:
    with pytest.raises(ChordSymbolError) as caught:
        read_chord(text)

    fault = caught.value
    assert (fault.code, text[fault.start : fault.end]) == (code, faulty)
    assert hint is None or fault.hint == hint
    assert fault.code in CATALOGUE


def test_a_chord_over_a_chord_is_called_so() -> None:
    with pytest.raises(ChordSymbolError, match="is a chord and no bass note") as caught:
        read_chord("D/C7")

    assert caught.value.hint.startswith("a chord over a chord is written as one")
