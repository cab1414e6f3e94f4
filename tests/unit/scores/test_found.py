"""What a score says is found, or told as lost: nothing is passed over."""

from fractions import Fraction
from typing import Any

import pytest
from music21 import corpus, harmony, key, note
from unit.scores.files import m21_part, midi_file, opening, xml_note, xml_score

from sitegen.harmony import read_chord
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.score.chord import Chord
from sitegen.scores import FoundScore, ScoreError, read_score
from sitegen.scores.losses import Losses
from sitegen.scores.music import find_chords

TIE, TIED = '<tie type="start"/>', '<tie type="stop"/>'


def found(*measures: str, **how: str) -> FoundScore:
    return read_score(xml_score(*measures, **how), ".musicxml")


def tune(text: str) -> FoundScore:
    return read_score(f"X:1\nM:2/4\nL:1/4\nK:C\n{text}\n".encode(), ".abc")


def heard(score: FoundScore) -> list[list[str]]:
    return [
        [f"{event.onset} {event.duration} {'+'.join(event.pitches)}" for event in part.events]
        for part in score.parts
    ]


def lost(score: FoundScore) -> dict[str, tuple[str, ...]]:
    return {loss.what: loss.onsets for loss in score.losses}


def test_each_staff_of_a_part_has_a_name_of_its_own() -> None:
    low = "<backup><duration>4</duration></backup>" + xml_note("C3", 4, voice=5, staff="2")
    score = found(opening(more="<staves>2</staves>") + xml_note("C5", 4, staff="1") + low)
    assert [part.name for part in score.parts] == ["Piano", "Piano 2"]
    assert heard(score) == [["0 2 C5"], ["0 2 C3"]]


def test_notes_that_overlap_in_one_part_are_all_there() -> None:
    low = "<backup><duration>4</duration></backup>" + xml_note("E4", 2, voice=2)
    score = found(opening() + xml_note("C5", 4) + low + xml_note("F4", 2, voice=2))
    assert heard(score) == [["0 2 C5"], ["0 1 E4", "1 1 F4"]]


def test_a_name_cannot_be_taken_for_what_separates_names() -> None:
    score = found(opening() + xml_note("C5", 4), name="Horns: 1, 2 | muted")
    assert score.parts[0].name == "Horns 1 2 muted"


def test_bars_have_the_numbers_of_the_file() -> None:
    first = f'<measure number="12">{opening()}{xml_note("C5", 4)}</measure>'
    score = found(first, f'<measure number="13">{xml_note("D5", 4)}</measure>')
    assert [bar.number for bar in score.bars] == [12, 13]


def test_bars_are_counted_where_the_numbers_of_the_file_go_back() -> None:
    first = f'<measure number="7">{opening()}{xml_note("C5", 4)}</measure>'
    score = found(first, f'<measure number="3">{xml_note("D5", 4)}</measure>')
    assert [bar.number for bar in score.bars] == [1, 2]


def test_the_rest_of_a_split_bar_has_its_number_and_starts_inside_the_meter() -> None:
    half = f'<measure number="1">{opening()}{xml_note("C5", 2)}</measure>'
    rest = f'<measure number="X1" implicit="yes">{xml_note("D5", 2)}</measure>'
    whole = f'<measure number="2">{xml_note("E5", 4)}</measure>'
    pickup = f'<measure number="0" implicit="yes">{opening()}{xml_note("G4", 2)}</measure>'
    score = found(pickup, half, rest, whole)
    told = [(bar.number, bar.length, bar.skipped) for bar in score.bars]
    assert told == [(0, "1", "1"), (1, "1", "0"), (1, "1", "1"), (2, "2", "0")]


def test_ties_are_one_note_in_every_kind_of_file() -> None:
    written = found(
        opening() + xml_note("C5", 4, TIE), xml_note("C5", 2, TIED) + xml_note("D5", 2)
    )
    assert heard(written) == [["0 3 C5", "3 1 D5"]]
    assert heard(tune("C2-|CD|")) == [["0 3 C4", "3 1 D4"]]
    data = midi_file(note.Note("C5", quarterLength=3))
    assert heard(read_score(data, ".mid")) == [["0 3 C5"]]


def test_endings_repeats_and_double_bars_are_found() -> None:
    ends = '<barline location="{}">{}<ending number="{}" type="{}"/>{}</barline>'
    first = ends.format("left", "", "1", "start", "") + xml_note("D5", 4)
    first += ends.format("right", "", "1", "stop", '<repeat direction="backward"/>')
    second = ends.format("left", "", "2", "start", "") + xml_note("E5", 4)
    third = xml_note("F5", 4) + ends.format(
        "right", "<bar-style>light-light</bar-style>", "2", "stop", ""
    )
    start = '<barline location="left"><repeat direction="forward"/></barline>'
    score = found(opening() + start + xml_note("C5", 4), first, second, third, xml_note("G5", 4))
    told = [(bar.ending, bar.ending_closes) for bar in score.bars]
    assert told == [("", False), ("1.", True), ("2.", False), ("", True), ("", False)]
    assert [bar.repeat_start for bar in score.bars] == [True, False, False, False, False]
    assert [bar.repeat_end for bar in score.bars] == [False, True, False, False, False]
    assert [bar.double_bar for bar in score.bars] == [False, False, False, True, False]


@pytest.mark.parametrize(
    "text",
    ["CD|EF|[M:3/4]GAB|cde|]", "CD|EF|\nM:3/4\nGAB|cde|]", "CD|EF| % three\n[M:3/4]GAB|cde|]"],
)
def test_changes_of_meter_in_abc_are_found(text: str) -> None:
    told = [(bar.number, bar.meter, bar.start) for bar in tune(text).bars]
    assert told == [(1, "2/4", "0"), (2, "2/4", "2"), (3, "3/4", "4"), (4, "3/4", "7")]


def test_several_changes_at_one_place_in_abc_are_all_found() -> None:
    score = tune("CD|EF|[K:G][M:3/4][Q:1/4=80]GAF|cde|]")
    assert [(key.onset, key.name) for key in score.keys] == [("0", "C major"), ("4", "G major")]
    assert [(tempo.onset, tempo.beats) for tempo in score.tempos] == [("4", 80)]
    assert [bar.meter for bar in score.bars] == ["2/4", "2/4", "3/4", "3/4"]
    assert heard(score)[0][6] == "6 1 F#4"


def test_a_change_inside_a_bar_of_abc_is_refused() -> None:
    with pytest.raises(ScoreError, match="inside a bar"):
        tune("CD|E[M:3/4]F|GA|")


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("CD|EF|\nw: one two", "words (w:)"),
        ("|:CD|1EF:|2GA:|3GF|]", "endings after the second"),
        ('"Cwhat"CD|EF|', "chord symbols that cannot be read"),
        ("{g}CD|EF|", "grace notes"),
        ("(CD)|EF|", "slurs"),
    ],
)
def test_what_abc_loses_is_told(text: str, what: str) -> None:
    assert what in lost(tune(text))
    assert what not in lost(tune('"C"CD|EF|'))


def direction(inside: str) -> str:
    return f"<direction><direction-type>{inside}</direction-type></direction>"


GRACE = "<note><grace/><pitch><step>C</step><octave>5</octave></pitch><voice>1</voice></note>"


@pytest.mark.parametrize(
    ("inside", "what"),
    [
        (direction("<dynamics><f/></dynamics>"), "dynamics"),
        (direction("<words>softly</words>"), "words of direction"),
        (direction("<words>D.C. al Fine</words>"), "jumps such as D.C."),
        (GRACE, "grace notes"),
    ],
)
def test_what_musicxml_loses_is_told_with_its_place(inside: str, what: str) -> None:
    score = found(opening() + xml_note("C5", 4), inside + xml_note("D5", 4))
    assert lost(score) == {what: ("2",)}


@pytest.mark.parametrize(
    ("notation", "mark"),
    [
        ("<articulations><accent/></articulations>", "accent"),
        ("<articulations><staccato/></articulations>", "staccato"),
        ("<articulations><tenuto/></articulations>", "tenuto"),
        ("<articulations><strong-accent/></articulations>", "marcato"),
        ("<fermata/>", "fermata"),
    ],
)
def test_marks_that_a_chart_can_hold_are_kept(notation: str, mark: str) -> None:
    score = found(opening() + xml_note("C5", 4, f"<notations>{notation}</notations>"))
    assert score.parts[0].events[0].marks == (mark,)
    assert lost(score) == {}


def test_an_ornament_is_told() -> None:
    ornament = "<notations><ornaments><trill-mark/></ornaments></notations>"
    assert lost(found(opening() + xml_note("C5", 4, ornament))) == {"ornaments": ("0",)}


def test_notes_that_no_instrument_plays_are_told() -> None:
    score = found(opening() + xml_note("C77", 2) + xml_note("C5", 2))
    assert heard(score) == [["1 1 C5"]]
    assert "notes that no instrument plays" in lost(score)


def test_a_bar_that_holds_more_than_its_meter_gets_a_meter_of_its_own() -> None:
    # bar 7 of BWV 324 in music21's corpus
    score = found(opening() + xml_note("C5", 6), xml_note("D5", 4))
    assert [(bar.meter, bar.length) for bar in score.bars] == [("3/4", "3"), ("2/4", "2")]
    assert lost(score) == {"a meter that is shorter than its bar": ("0",)}


def test_a_meter_that_no_bar_has_is_refused() -> None:
    with pytest.raises(ScoreError, match="bar 1: a bar has 1 to 64 beats"):
        found(opening(beats=70) + xml_note("C5", 140))


def test_rehearsal_marks_are_sections() -> None:
    mark = "<direction><direction-type><rehearsal>B</rehearsal></direction-type></direction>"
    score = found(opening() + xml_note("C5", 4), mark + xml_note("D5", 4))
    assert [(one.onset, one.text) for one in score.sections] == [("2", "B")]


@pytest.mark.parametrize("encoding", ["ISO-8859-1", "UTF-8", "UTF-16"])
def test_letters_are_those_of_the_encoding_that_the_file_says(encoding: str) -> None:
    lyric = "<lyric number='1'><text>\xe9t\xe9</text></lyric>"
    score = found(opening() + xml_note("C5", 4, lyric), encoding=encoding)
    assert [one.text for one in score.parts[0].events[0].lyrics] == ["\xe9t\xe9"]


def test_a_signature_is_that_of_what_sounds() -> None:
    clarinet = "<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose>"
    score = found(opening(fifths=2, more=clarinet) + xml_note("D5", 4))
    assert [(key.fifths, key.name) for key in score.keys] == [(0, "")]
    assert heard(score) == [["0 2 C5"]]


@pytest.mark.parametrize("kind", sorted(harmony.CHORD_TYPES))
def test_every_kind_of_chord_is_read_as_it_sounds_or_told(kind: str) -> None:
    symbol = harmony.ChordSymbol(root="B-", kind=kind)
    part = m21_part(symbol, note.Note("C5", quarterLength=2)).makeMeasures()
    texts = [one.text for one in find_chords([part], Losses())]
    for text in texts:
        try:
            chord = read_chord(text)
        except ChordSymbolError:
            continue  # it is told with its bar when the bars are cut out
        assert isinstance(chord, Chord)
        theirs = {pitch.pitchClass for pitch in symbol.pitches}
        ours = set(chord.pitch_classes)
        # A thirteenth chord leaves out its eleventh here, by common practice.
        assert ours == theirs or ("13" in text and ours == theirs - {(10 + 5) % 12})


def test_a_midi_file_says_its_key_and_no_names() -> None:
    data = midi_file(key.Key("e-"), note.Note("G-4", quarterLength=2))
    score = read_score(data, ".mid")
    assert not score.is_spelled
    assert [key.name for key in score.keys] == ["Eb minor"]


def test_a_humdrum_file_in_latin_1_is_read() -> None:
    text = "!! caf\xe9\n**kern\n*M2/4\n=1\n4f\n4a\n==\n*-\n"
    assert heard(read_score(text.encode("latin-1"), ".krn")) == [["0 1 F4", "1 1 A4"]]


@pytest.mark.parametrize("name", ["bach/bwv66.6", "palestrina/Gloria_56_b"])
def test_voices_cover_every_note_once(name: str, tmp_path: Any) -> None:  # noqa: ANN401
    # J. S. Bach and Palestrina, in music21's corpus.
    path = tmp_path / "score.musicxml"
    parsed: Any = corpus.parse(name)
    parsed.write("musicxml", fp=str(path))
    for part in read_score(path.read_bytes(), ".musicxml").parts:
        now = Fraction(0)
        for event in part.events:
            assert Fraction(event.onset) >= now
            now = Fraction(event.onset) + Fraction(event.duration)
