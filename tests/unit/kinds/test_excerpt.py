"""Bars of a score file are shown like typed notation, and what is wrong is told at its line."""

import pytest
from music21 import note
from unit.kinds.files import FilesBeside, defaults_of
from unit.scores.files import midi_file, opening, xml_note, xml_score

from sitegen.charts.defaults import SongDefaults
from sitegen.charts.reading import Reading
from sitegen.kinds.excerpt import EXCERPT, LANTERN
from sitegen.kinds.kind import Surroundings
from sitegen.kinds.notation import NOTATION
from sitegen.score.chart import Chart
from sitegen.score.key import Key
from sitegen.source import Passage

LONG = "X:1\nM:4/4\nL:1/4\nK:G\n" + "GABc|" * 80 + "\n"


def read(text: str, **files: str) -> Reading:
    table = {name.replace("_", "."): data.encode() for name, data in files.items()}
    beside = FilesBeside({"lantern.abc": LANTERN.encode(), **table})
    return EXCERPT.read(Passage.of(text), SongDefaults(Key.read("C"), beside=beside))


def chart(text: str, **files: str) -> Chart:
    found = read(text, **files)
    assert [fault.message for fault in found.diagnostics] == []
    assert isinstance(found.chart, Chart)
    return found.chart


def test_the_bars_asked_for_are_shown_with_their_numbers() -> None:
    found = chart("file: lantern.abc\nbars: 2-3")
    told = [(bar.number, int(bar.start), int(bar.length)) for bar in found.bars]
    assert told == [(2, 0, 3), (3, 3, 3)]
    (part,) = found.parts
    events = [(int(e.onset), int(e.duration), str(e.notes[0].pitch)) for e in part.events]
    assert events[:2] == [(0, 2, "G5"), (2, 1, "F5")]
    assert [(str(one.chord), int(one.onset)) for one in found.chords] == [("Gm", 0), ("A7", 3)]


def test_a_chord_from_before_the_bars_sounds_on() -> None:
    tune = LANTERN.replace('"Gm"g4', "g4")
    found = chart("file: tune.abc\nbars: 2", tune_abc=tune)
    assert [(str(one.chord), int(one.onset)) for one in found.chords] == [("Dm", 0)]


def test_the_score_says_key_and_tempo_where_the_excerpt_is_silent() -> None:
    found = chart("file: lantern.abc")
    assert str(found.key) == "D minor"
    assert found.tempo is not None
    assert found.tempo.beats_per_minute == 96
    assert str(chart("file: lantern.abc\nkey: F").key) == "F major"


def test_the_pickup_is_bar_nought_and_skips_its_beats() -> None:
    bar = chart("file: lantern.abc\nbars: 0-1").bars[0]
    assert (bar.number, int(bar.length), int(bar.skipped)) == (0, 1, 2)


def test_silence_is_filled_with_rests() -> None:
    found = chart("file: tune.abc", tune_abc="X:1\nM:4/4\nL:1/4\nK:G\nz2 G z|\n")
    told = [(int(e.onset), int(e.duration), len(e.notes)) for e in found.parts[0].events]
    assert told == [(0, 2, 0), (2, 1, 1), (3, 1, 0)]


def test_a_part_may_be_told_its_instrument() -> None:
    found = chart("file: lantern.abc\nmelody: bass clef")
    assert found.parts[0].instrument.clef == "bass"


def test_the_contents_of_the_file_count_as_used() -> None:
    uses = read("file: lantern.abc").uses
    assert uses
    assert read("file: tune.abc", tune_abc=LONG).uses != uses
    assert EXCERPT.read(Passage.of("file: x.abc"), SongDefaults()).uses == ""


TYPED = """\
key: D minor
meter: 3/4
tempo: 96

count  | 1   &   2   &   3   &   | 1   &   2   &   3   &   |
chord  | Dm                      | Gm                      |
melody | D5          E5  F5      | G5              F5      |
"""


def test_it_is_analysed_as_if_it_were_typed() -> None:
    typed = NOTATION.read(Passage.of(TYPED), SongDefaults())
    assert typed.diagnostics == ()
    found = chart("file: lantern.abc\nbars: 1-2")
    around = Surroundings("a", "Example 1", source=Passage.of(TYPED).source)
    records = [
        dict(kind.analyse(one, around).record)
        for kind, one in ((EXCERPT, found), (NOTATION, typed.chart))
    ]
    assert [record.pop("kind") for record in records] == ["excerpt", "notation"]
    assert records[0] == records[1]
    facts = [
        [(fact.path, fact.text) for fact in kind.analyse(one, around).facts]
        for kind, one in ((EXCERPT, found), (NOTATION, typed.chart))
    ]
    assert facts[0]
    assert facts[0] == facts[1]


def test_a_part_may_have_another_name_here() -> None:
    (part,) = chart("file: lantern.abc\nparts: melody as low voice\nlow voice: bass clef").parts
    assert (part.name, part.instrument.family, part.instrument.clef) == (
        "low voice", "voice", "bass"
    )  # fmt: skip


def test_a_note_from_before_the_bars_sounds_on_and_that_is_told() -> None:
    tune = "X:1\nM:2/4\nL:1/4\nK:G\nG2-|GB-|B2|\n"
    found = read("file: tune.abc\nbars: 2", tune_abc=tune)
    assert [(one.code, one.severity) for one in found.diagnostics] == [("excerpt-held", "note")]
    assert isinstance(found.chart, Chart)
    events = [
        (int(e.onset), int(e.duration), str(e.notes[0].pitch)) for e in found.chart.parts[0].events
    ]
    assert events == [(0, 1, "G4"), (1, 1, "B4")]


def test_an_ending_that_is_cut_into_has_its_bracket() -> None:
    tune = "X:1\nM:2/4\nL:1/4\nK:G\n|:GA|1Bc|dB:|2AG|G2||\n"
    told = [(bar.ending, bar.ending_closes) for bar in chart("file: t.abc", t_abc=tune).bars]
    assert told == [("", False), ("1.", False), ("", True), ("2.", False), ("", True)]
    cut = chart("file: t.abc\nbars: 3", t_abc=tune).bars
    assert [(bar.number, bar.ending, bar.ending_closes) for bar in cut] == [(3, "1.", True)]


def test_key_and_tempo_are_those_of_the_bars_shown() -> None:
    tune = "X:1\nM:2/4\nL:1/4\nQ:1/4=90\nK:C\nCD|EF|\nK:G\nQ:1/4=60\nGF|GA|\n"
    late = chart("file: t.abc\nbars: 3-4", t_abc=tune)
    assert (str(late.key), str(late.tempo)) == ("G major", "quarter = 60")
    early = chart("file: t.abc\nbars: 1-2", t_abc=tune)
    assert (str(early.key), str(early.tempo)) == ("C major", "quarter = 90")
    whole = read("file: t.abc", t_abc=tune)
    assert [one.message.split(":")[0] for one in whole.diagnostics] == [
        "changes of key (bar 3)", "changes of tempo (bar 3)"
    ]  # fmt: skip


def test_what_is_lost_elsewhere_is_not_told() -> None:
    graced = LONG.replace("GABc|", "{g}GABc|", 1)
    assert chart("file: t.abc\nbars: 2-3", t_abc=graced).bars


def test_a_signature_without_a_mode_is_the_songs_where_they_agree() -> None:
    score = xml_score(opening(fifths=-1) + xml_note("D5", 4))
    files = FilesBeside({"a.musicxml": score})
    for song, key in (("D minor", "D minor"), ("A minor", "F major")):
        defaults = SongDefaults(Key.read(song), beside=files)
        found = EXCERPT.read(Passage.of("file: a.musicxml"), defaults).chart
        assert isinstance(found, Chart)
        assert str(found.key) == key


def test_a_midi_file_is_spelled_by_the_key() -> None:
    files = FilesBeside({"a.mid": midi_file(note.Note("F#4"), note.Note("A#4"))})
    for key, names in (("Eb minor", ["G♭4", "B♭4"]), ("B", ["F♯4", "A♯4"])):
        found = EXCERPT.read(Passage.of(f"file: a.mid\nkey: {key}"), SongDefaults(beside=files))
        assert isinstance(found.chart, Chart)
        events = found.chart.parts[0].events
        assert [str(one.pitch) for event in events for one in event.notes] == names


@pytest.mark.parametrize(
    ("text", "code", "line", "words"),
    [
        ("id: a", "excerpt-file", 1, "names no score file"),
        ("file: tune.pdf", "excerpt-file", 1, "no score file that is read"),
        ("file: tune.mxl", "excerpt-file", 1, "no file"),
        ("file: lantern.abc\nbars: 9-12", "excerpt-bars", 2, "the bars 0 to 8"),
        ("file: lantern.abc\nbars: x", "head-value", 2, "names no bars"),
        ("file: lantern.abc\nbars: 5-2", "head-value", 2, "comes before"),
        ("file: long.abc", "excerpt-bars", 1, "up to 64 bars"),
        ("file: lantern.abc\nparts: tuba", "excerpt-part", 2, 'no part "tuba"'),
        ("file: lantern.abc\nparts: melody, melody", "head-value", 2, "named twice"),
        ("file: lantern.abc\nmeter: 4/4", "head-field", 2, "its score's"),
        ("file: lantern.abc\nshow: tab", "head-value", 2, "shows no"),
        ("file: lantern.abc\ntuba: drop D", "head-field", 2, "no head line"),
        ("file: lantern.abc\n\nvoice | C5 |", "excerpt-line", 3, "head lines only"),
        ("file: odd.abc\nbars: 1-2", "excerpt-score", 1, "1 to 64 beats"),
        ("file: bad.musicxml", "excerpt-score", 1, "is not read"),
        ("file: graced.abc", "excerpt-loss", 1, "grace notes"),
    ],
)
def test_what_is_wrong_is_told_at_its_line(text: str, code: str, line: int, words: str) -> None:
    graced = LONG.replace("GABc|" * 80, "{g}GABc|")
    odd = LONG.replace("4/4", "99/4")
    (fault, *_) = read(
        text, odd_abc=odd, long_abc=LONG, bad_musicxml="<a", graced_abc=graced
    ).diagnostics
    assert (fault.code, fault.span.line) == (code, line)
    assert words in f"{fault.message} {fault.hint}"


def test_id_and_title_are_known_even_when_the_score_is_lost() -> None:
    found = read("id: refrain\ntitle: The refrain\nfile: gone.abc")
    assert (found.id, found.title, found.chart) == ("refrain", "The refrain", None)


def test_the_example_needs_no_more_than_its_file() -> None:
    found = EXCERPT.read(Passage.of(EXCERPT.example), defaults_of(EXCERPT))
    assert found.diagnostics == ()
