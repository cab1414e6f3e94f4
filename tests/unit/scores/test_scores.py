"""Scores of every kind are read as music21 reads them, and hostile ones are refused in words."""

import re
import sys
import zipfile
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from music21 import converter, corpus
from unit.scores.files import packed

from sitegen.score.pitch import Pitch
from sitegen.scores import FoundScore, ScoreError, read_score
from sitegen.scores import reading as score_reading
from sitegen.scores.safety import LARGEST

ABC = """\
X:1
T:Lantern Road
M:3/4
L:1/8
Q:1/4=96
K:Dm
A2|"Dm"d3 e f2|"Gm"g4 f2|"A7"e3 d ^c2|"Dm"d4:|
"""
XML = """\
<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">
<score-partwise version="4.0">
<part-list><score-part id="P1"><part-name>Clarinet</part-name></score-part></part-list>
<part id="P1"><measure number="1">
<attributes><divisions>2</divisions><key><fifths>2</fifths></key>
<time><beats>2</beats><beat-type>4</beat-type></time>
<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></transpose></attributes>
<note><pitch><step>D</step><octave>5</octave></pitch><duration>2</duration><type>quarter</type>
<lyric number="1"><syllabic>begin</syllabic><text>lan</text></lyric></note>
<note><pitch><step>F</step><alter>1</alter><octave>5</octave></pitch><duration>2</duration>
<type>quarter</type><lyric number="1"><syllabic>end</syllabic><text>tern</text></lyric></note>
</measure></part></score-partwise>
"""
KRN = "**kern\n*M2/4\n*k[b-]\n=1\n4f\n4a\n=2\n2b-\n==\n*-\n"


def heard(score: FoundScore) -> list[tuple[str, str, str]]:
    return [
        (event.onset, event.duration, " ".join(event.pitches))
        for part in score.parts
        for event in part.events
    ]


def test_an_abc_tune_has_its_pickup_chords_key_and_tempo() -> None:
    score = read_score(ABC.encode(), ".abc")
    assert [(bar.number, bar.length) for bar in score.bars] == [
        (0, "1"), (1, "3"), (2, "3"), (3, "3"), (4, "2")
    ]  # fmt: skip
    assert score.bars[-1].repeat_end
    assert [(one.onset, one.text) for one in score.chords] == [
        ("1", "Dm"), ("4", "Gm"), ("7", "A7"), ("10", "Dm")
    ]  # fmt: skip
    assert [(key.name, key.fifths) for key in score.keys] == [("D minor", -1)]
    assert [(tempo.beats, tempo.beat) for tempo in score.tempos] == [(96, "1")]
    assert heard(score)[:3] == [("0", "1", "A4"), ("1", "3/2", "D5"), ("5/2", "1/2", "E5")]


@pytest.mark.parametrize("suffix", [".musicxml", ".mxl"])
def test_a_transposing_part_is_read_as_it_sounds_with_its_words(suffix: str) -> None:
    data = XML.encode()
    if suffix == ".mxl":
        container = '<container><rootfiles><rootfile full-path="a/s.xml"/></rootfiles></container>'
        data = packed({"META-INF/container.xml": container.encode(), "a/s.xml": data})
    score = read_score(data, suffix)
    # A clarinet in B flat: what is written D5 and F#5 sounds a whole tone lower.
    assert heard(score) == [("0", "1", "C5"), ("1", "1", "E5")]
    lyrics = [event.lyrics[0] for event in score.parts[0].events]
    assert [(lyric.text, lyric.joined) for lyric in lyrics] == [("lan", True), ("tern", False)]
    assert score.parts[0].name == "Clarinet"


def test_humdrum_and_midi_are_read(tmp_path: Path) -> None:
    kern = read_score(KRN.encode(), ".krn")
    assert heard(kern) == [("0", "1", "F4"), ("1", "1", "A4"), ("2", "2", "Bb4")]
    path = tmp_path / "tune.mid"
    plain = re.sub(r'"\w+"', "", ABC).replace(":|", "|]")
    score: Any = converter.parseData(plain, format="abc")
    score.write("midi", fp=str(path))
    found = read_score(path.read_bytes(), ".mid")
    pitches = [Pitch.read(pitch).midi for _, _, pitch in heard(found)]
    tune = heard(read_score(plain.encode(), ".abc"))
    assert pitches == [Pitch.read(pitch).midi for _, _, pitch in tune]


def notes_of(score: Any) -> Iterator[tuple[Fraction, int]]:  # noqa: ANN401 - it has no types
    for part in score.parts:
        for note in part.stripTies().recurse().notes:
            onset = Fraction(note.getOffsetInHierarchy(part)).limit_denominator(6720)
            yield from ((onset, pitch.midi) for pitch in note.pitches)


@pytest.mark.parametrize("name", ["bach/bwv66.6", "bach/bwv269", "bach/bwv281"])
def test_a_chorale_has_the_notes_that_the_library_finds(name: str, tmp_path: Path) -> None:
    # The chorales are J. S. Bach's, in music21's corpus.
    path = tmp_path / "chorale.musicxml"
    score: Any = corpus.parse(name)
    score.write("musicxml", fp=str(path))
    found = read_score(path.read_bytes(), ".musicxml")
    ours = sorted(
        (Fraction(event.onset), Pitch.read(pitch).midi)
        for part in found.parts
        for event in part.events
        for pitch in event.pitches
    )
    assert ours == sorted(notes_of(converter.parse(path)))
    assert len(found.parts) == 4


HOSTILE = {
    "entities": (b"<!DOCTYPE a [<!ENTITY b 'c'>]><score-partwise/>", ".xml", "entities"),
    "a document type": (
        b"<!DOCTYPE a [<!ELEMENT b ANY>]><score-partwise/>",
        ".musicxml",
        "document",
    ),
    "a document type behind a quotation": (
        b'<!DOCTYPE a SYSTEM "b>" [ ]><score-partwise/>',
        ".musicxml",
        "document",
    ),
    "another encoding": (b"<?xml version='1.0' encoding='UTF-7'?><a/>", ".xml", "utf-7"),
    "damage inside": (packed({"s.xml": b"<a>" * 50})[:60] + bytes(90), ".mxl", "compressed"),
    "another packing": (packed({"s.xml": b"<a/>"}, zipfile.ZIP_BZIP2), ".mxl", "packed in a way"),
    "entities in UTF-16": ("<!ENTITY b 'c'><a/>".encode("utf-16"), ".musicxml", "entities"),
    "half of UTF-16": ("<a/>".encode("utf-16")[:-1], ".musicxml", "UTF-16"),
    "nothing inside": (b"<score-partwise/>", ".musicxml", "no part|no score|cannot|no bars"),
    "no XML": (b"<score-partwise><part", ".musicxml", "can be read"),
    "no archive": (b"PK\x03\x04 and no more", ".mxl", "compressed"),
    "a bomb": (packed({"s.xml": b" " * 3_900_000}), ".mxl", "larger"),
    "many files": (packed({f"{n}.xml": b"<a/>" for n in range(100)}), ".mxl", "more than 64"),
    "two scores": (packed({"a.xml": b"<a/>", "b.xml": b"<a/>"}), ".mxl", "which of its files"),
    "entities in it": (packed({"s.xml": b"<!ENTITY a 'b'>"}), ".mxl", "entities"),
    "a large file": (b" " * (LARGEST + 1), ".abc", "more than 4 MB"),
    "NUL": (b"X:1\nK:C\nC\x00D", ".abc", "not text"),
    "no MIDI": (b"MThd\x00\x00", ".mid", "cannot be read|no score"),
    "two tunes": (ABC.encode() + b"\n" + ABC.replace("X:1", "X:2").encode(), ".abc", "several"),
}


@pytest.mark.parametrize("what", HOSTILE)
def test_what_is_no_score_to_read_is_refused(what: str) -> None:
    data, suffix, reason = HOSTILE[what]
    with pytest.raises(ScoreError, match=reason):
        read_score(data, suffix)


def test_a_reader_that_takes_too_long_is_ended(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(score_reading, "PATIENCE", 0.05)
    with pytest.raises(ScoreError, match="longer"):
        read_score(ABC.replace("Lantern", "Slow").encode(), ".abc")


def test_a_reader_that_takes_too_much_memory_is_ended(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "executable", "/bin/false")
    with pytest.raises(ScoreError, match="memory"):
        read_score(ABC.replace("Lantern", "Large").encode(), ".abc")
