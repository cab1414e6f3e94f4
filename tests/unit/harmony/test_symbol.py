"""Chord symbols as writers write them."""

import string

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sitegen.diagnostics import CATALOGUE
from sitegen.harmony import ChordSymbolError, read_chord
from sitegen.harmony.qualities import QUALITIES, SPELLINGS
from sitegen.score.chord import Chord, NoChord

ROOTS = st.builds(str.__add__, st.sampled_from("ABCDEFG"), st.sampled_from(["", "b", "#"]))
ALTERATIONS = "b5 #5 b9 #9 #11 b13 add9 add11 add13 add#11 no3 no5 sus2 sus4 sus9 -9 +5".split()
SUFFIXES = st.builds(
    lambda quality, changes: quality + "".join(f"({change})" for change in changes),
    st.sampled_from(sorted(SPELLINGS)),
    st.lists(st.sampled_from(ALTERATIONS), max_size=4),
)
SYMBOLS = st.builds(str.__add__, ROOTS, SUFFIXES)


def chord(text: str) -> Chord:
    read = read_chord(text)
    assert isinstance(read, Chord)
    return read


def fault_of(text: str) -> ChordSymbolError | None:
    try:
        read_chord(text)
    except ChordSymbolError as wrong:
        return wrong
    return None


@pytest.mark.parametrize(
    ("symbol", "members", "degrees"),
    # Spelled by counting letters from the root, as any rudiments book does.
    [
        ("Gbsus2", "G♭ A♭ D♭", "R 2 5"),
        ("Ebsus2", "E♭ F B♭", "R 2 5"),
        ("F♯m7♭5", "F♯ A C E", "R ♭3 ♭5 ♭7"),
        ("Cdim7", "C E♭ G♭ B♭♭", "R ♭3 ♭5 ♭♭7"),
        ("G7(b9,#11)", "G B D F A♭ C♯", "R 3 5 ♭7 ♭9 ♯11"),
        ("Abmaj7", "A♭ C E♭ G", "R 3 5 7"),
        ("B+", "B D♯ F♯♯", "R 3 ♯5"),
        ("D6/9", "D F♯ A B E", "R 3 5 6 9"),
        ("E7#9", "E G♯ B D F♯♯", "R 3 5 ♭7 ♯9"),
        ("A5", "A E", "R 5"),
        ("Dsus4", "D G A", "R 4 5"),
        ("Calt", "C E G♭ G♯ B♭ D♭ D♯", "R 3 ♭5 ♯5 ♭7 ♭9 ♯9"),
        ("Cm13", "C E♭ G B♭ D F A", "R ♭3 5 ♭7 9 11 13"),
        ("C13", "C E G B♭ D A", "R 3 5 ♭7 9 13"),
        ("Csus9", "C G D", "R 5 9"),
    ],
)
def test_members_are_spelled_as_degrees_of_the_root(
    symbol: str, members: str, degrees: str
) -> None:
    assert " ".join(map(str, chord(symbol).members)) == members
    assert " ".join(chord(symbol).degrees) == degrees


@pytest.mark.parametrize(
    "spellings",
    [
        "Cmaj7 CM7 CΔ7 C∆ Cma7 Cj7 Cmajor7 C^7 C(maj7)",
        "Cm7b5 Cø Cø7 C-7b5 Cm7(♭5) Cmin7-5 C−7−5 Chalfdim7",
        "Cdim C° Co Cm(b5) C˚",
        "C+ Caug C(#5) C+5",
        "C6/9 C69 C6add9 C6(9)",
        "Csus Csus4",
        "C7sus4 C7sus Csus7 Cm7sus4 C7(sus4)",
        "C9sus C9sus4",
        "C7b9#11 C7#11b9 C7(b9,#11) C7(♯11)(♭9) C7-9+11 C7b9(#11)",
        "C7#5 C+7 Caug7 C7+ C7+5 C7aug",
        "Cno3 C5 Comit3 C(no3) C5(no3) C(omit3) C(no3rd)",
        "Cadd9 C(add9) C(9) C/9",
        "CmM7 Cm(maj7) Cm/maj7 C-Δ7 CminMaj7",
        "C7alt Calt C7b5#5b9#9",
        "C♮7 C7 Cdom7 C⁷ C(7)",
        "C+maj9 Caug(maj9) Cmaj9#5 CM9+5",
        "C9 C7(♮9) C7add9 C7/9",
        "Csus2sus4 Csus24 Csus2/4 Csus42",
    ],
)
def test_spellings_of_one_chord_are_equal(spellings: str) -> None:
    assert len({chord(symbol) for symbol in spellings.split()}) == 1


def test_spaces_within_a_symbol_are_passed_over() -> None:
    assert read_chord("C maj7 (#11, 13) / E") == read_chord("Cmaj7(#11,13)/E")


@pytest.mark.parametrize("text", ["N.C.", "NC", "n.c.", "nc", " N.C. "])
def test_no_chord_is_read(text: str) -> None:
    assert read_chord(text) == NoChord()


@pytest.mark.parametrize(
    ("symbol", "bass", "printed"),
    [
        ("C5/G", "G", "C5/G"),
        ("F♯m7♭5/E", "E", "F♯m7♭5/E"),
        ("C6/9/E", "E", "C6/9/E"),
        ("Bb/C", "C", "B♭/C"),
        ("C/C", "C", "C"),
    ],
)
def test_a_slash_names_the_bass(symbol: str, bass: str, printed: str) -> None:
    assert str(chord(symbol).bass) == bass
    assert str(chord(symbol)) == printed


@pytest.mark.parametrize(
    ("symbol", "printed"),
    [
        ("C#5", "C♯5"),  # a power chord on C sharp, not C with a raised fifth
        ("C(#5)", "C+"),
        ("C(b5)", "C(♭5)"),
        ("Eb9", "E♭9"),
        ("B♭♭5", "B♭♭5"),
        ("Bb(b5)", "B♭(♭5)"),
        ("C7b13", "C7♭13"),
        ("C9b5", "C9♭5"),
        ("C7(13)", "C7add13"),
        ("Cmb6", "Cmadd♭6"),
        ("Comit5", "Cno5"),
    ],
)
def test_symbols_are_printed_in_one_way(symbol: str, printed: str) -> None:
    assert str(chord(symbol)) == printed


def test_a_chord_remembers_how_it_was_written() -> None:
    assert chord("C−7").written == "C−7"


@pytest.mark.parametrize(
    ("text", "code", "faulty", "hint"),
    [
        ("Gbmajj7", "chord-quality", "majj7", 'did you mean "maj7"?'),
        ("Cmni", "chord-quality", "mni", None),
        ("am7", "chord-root", "a", 'did you mean "Am7"?'),
        ("H7", "chord-root", "H", "the German H is written B here"),
        ("X", "chord-root", "X", "a chord starts with its root, A to G"),
        ("", "chord-root", "", "a chord starts with its root, A to G"),
        ("C7(b9,#12)", "chord-alteration", "#12", None),
        ("C7b9#12", "chord-alteration", "#12", None),
        ("C7(addb5)", "chord-alteration", "addb5", None),
        ("C7b99", "chord-alteration", "b99", None),
        ("C7b", "chord-alteration", "b", None),
        ("C7♭12", "chord-alteration", "♭12", None),
        ("♭7", "chord-root", "♭", "a chord starts with its root, A to G"),
        ("C/e", "chord-bass", "e", 'did you mean "E"?'),
        ("Csus3", "chord-alteration", "sus3", None),
        ("Cno4", "chord-alteration", "no4", None),
        ("Cno9", "chord-alteration", "no9", ""),
        ("C7(maj7)", "chord-alteration", "maj7", ""),
        ("Am7/H", "chord-bass", "H", None),
        ("Am7/", "chord-bass", "/", "name the bass, C/E, or leave the slash out"),
        ("C7(b9", "chord-bracket", "(", "close it with ) in the same symbol"),
        ("C7b9)", "chord-bracket", ")", None),
        ("Bbb5", "chord-two-ways", "Bbb5", 'write "Bb(b5)" or "B♭♭5"'),
        ("C-5", "chord-two-ways", "C-5", 'write "C(b5)" or "Cm"'),
        ("  Cmajj7", "chord-quality", "majj7", 'did you mean "maj7"?'),
    ],
)
def test_a_fault_is_found_where_it_stands(
    text: str, code: str, faulty: str, hint: str | None
) -> None:
    with pytest.raises(ChordSymbolError) as caught:
        read_chord(text)

    assert (caught.value.code, text[caught.value.start : caught.value.end]) == (code, faulty)
    assert hint is None or caught.value.hint == hint
    assert code in CATALOGUE


@given(st.one_of(st.text(), st.text(alphabet=string.printable + "♭♯♮−ΔøCEGmaj79(),/"), SYMBOLS))
def test_any_text_is_read_or_refused_at_a_place_in_it(text: str) -> None:
    wrong = fault_of(text)
    if wrong is not None:
        assert 0 <= wrong.start <= wrong.end <= len(text)
        assert wrong.code in CATALOGUE
        assert wrong.message


@given(SYMBOLS)
def test_the_printed_symbol_reads_back_equal(symbol: str) -> None:
    assume(fault_of(symbol) is None)
    read = read_chord(symbol)
    assert read_chord(str(read)) == read
    assert read_chord(str(read).replace("♭", "b").replace("♯", "#")) == read


@given(ROOTS, st.permutations(["b9", "#11", "b13", "sus4", "no5"]))
def test_the_order_of_alterations_does_not_matter(root: str, changes: list[str]) -> None:
    whole = "".join(changes)
    assert read_chord(f"{root}7({','.join(changes)})") == read_chord(f"{root}7sus4b9#11b13no5")
    assert read_chord(f"{root}7{whole}") == read_chord(f"{root}7sus4b9#11b13no5")


def test_no_spelling_stands_for_two_qualities() -> None:
    spellings = [spelling for quality in QUALITIES for spelling in set(quality.spellings)]
    assert len(spellings) == len(set(spellings))


@pytest.mark.parametrize("quality", [q for q in QUALITIES if q.named], ids=lambda q: f"C{q.name}")
def test_every_quality_is_read_by_its_own_name(quality: object) -> None:
    name = getattr(quality, "name", "")
    assert chord(f"C{name}").quality == name
