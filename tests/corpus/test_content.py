"""Every write-up of the demo site: no fault, valid MEI, and all that sounds is in the MEI."""

from collections import Counter
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest
from lxml import etree

from sitegen.analysis.reading import ChartReading
from sitegen.engraving import write_mei
from sitegen.kinds import KINDS
from sitegen.site.content import ContentFile, scan_content
from sitegen.site.study import Study, study_file

ID = "{http://www.w3.org/XML/1998/namespace}id"
MEI = "{http://www.music-encoding.org/ns/mei}"
CONTENT = Path(__file__).parents[2] / "content"
FOUND = scan_content(CONTENT)
FILES = (*FOUND.articles, *FOUND.pages)
EACH_FILE = pytest.mark.parametrize("file", FILES, ids=lambda file: file.slug)


@cache
def studied(file: ContentFile) -> Study:
    return study_file(file, KINDS)


def engraved_charts(file: ContentFile) -> list[ChartReading]:
    """Return the charts of a file that are drawn as notation."""
    analyses = [chart.analysis for chart in studied(file).charts if chart.analysis is not None]
    values = [analysis.value for analysis in analyses]
    return [v for v in values if isinstance(v, ChartReading) and v.chart.kind == "notation"]


def test_there_is_content_to_look_at() -> None:
    assert len(FOUND.articles) >= 3
    assert sum(len(engraved_charts(file)) for file in FILES) >= 9


@EACH_FILE
def test_a_write_up_has_no_fault(file: ContentFile) -> None:
    assert [f"{d.span.line}: {d.message}" for d in studied(file).diagnostics] == []
    assert not studied(file).bugs


@EACH_FILE
@pytest.mark.parametrize("width", ["wide", "narrow"])
def test_every_mei_is_valid(file: ContentFile, width: str, mei_schema: Path) -> None:
    schema = _schema(mei_schema)
    for reading in engraved_charts(file):
        document = etree.fromstring(write_mei(reading, width).encode())
        schema.assertValid(document)


@cache
def _schema(path: Path) -> etree.RelaxNG:
    return etree.RelaxNG(etree.parse(str(path)))


@EACH_FILE
@pytest.mark.filterwarnings("ignore")
def test_all_that_sounds_is_in_the_mei_at_its_time(file: ContentFile) -> None:
    """Read the MEI back with music21 and compare pitches, onsets and tied durations."""
    for reading in engraved_charts(file):
        assert _read_back(write_mei(reading)) == _in_the_chart(reading), reading.chart.id


def _in_the_chart(reading: ChartReading) -> Counter[tuple[int, Fraction, Fraction]]:
    """Return (MIDI, onset, duration) of each pitched note on a staff."""
    return Counter(
        (note.note.midi or 0, note.onset, note.duration)
        for note in reading.notes
        if note.note.pitch is not None
    )


def _read_back(mei: str) -> Counter[tuple[int, Fraction, Fraction]]:
    """Return the same of the MEI, drums and dead notes (x heads) left out."""
    from music21 import chord, clef, converter, note, stream  # noqa: PLC0415 - takes a third of a second

    root = _for_music21(mei)
    crossed = {n.get(ID) for n in root.iter(f"{MEI}note") if n.get("head.shape") == "x"}
    score = converter.parse(etree.tostring(root, encoding="unicode"), format="mei")
    assert isinstance(score, stream.Score)
    found: Counter[tuple[int, Fraction, Fraction]] = Counter()
    for part in score.parts:
        if part.recurse().getElementsByClass(clef.PercussionClef):
            continue
        for element in part.stripTies().flatten().notes:
            onset = Fraction(element.offset).limit_denominator(96)
            duration = Fraction(element.quarterLength).limit_denominator(96)
            members = element.notes if isinstance(element, chord.Chord) else (element,)
            for member in members:
                assert isinstance(member, note.Note)
                if not element.duration.isGrace and member.id not in crossed:
                    found[round(member.pitch.ps), onset, duration] += 1
    return found


def _for_music21(mei: str) -> etree._Element:
    """Return the MEI without what music21 10 cannot read: tablature and the frame of endings."""
    root = etree.fromstring(mei.encode())
    tabs = {
        definition.get("n")
        for definition in root.iter(f"{MEI}staffDef")
        if (definition.get("notationtype") or "").startswith("tab")
    }
    for element in list(root.iter(f"{MEI}staffDef", f"{MEI}staff")):
        parent = element.getparent()
        if element.get("n") in tabs and parent is not None:
            parent.remove(element)
    for ending in root.iter(f"{MEI}ending"):
        ending.tag = f"{MEI}section"
        ending.attrib.clear()
    return root
