"""Bars of a score file are shown like typed notation, and what is wrong is told at its line."""

import pytest
from unit.kinds.files import FilesBeside, defaults_of

from sitegen.charts.defaults import SongDefaults
from sitegen.charts.reading import Reading
from sitegen.kinds.excerpt import EXCERPT, LANTERN
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
