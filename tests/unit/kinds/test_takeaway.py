"""What can be taken away of a chart: which files each kind gives, and that they agree."""

from io import BytesIO

import pytest
from lxml import etree
from mido import MidiFile
from unit.engraving.reading_musicxml import assert_says_the_same, load_schema
from unit.engraving.writing import parsed
from unit.kinds.files import defaults_of

from sitegen.kinds import KINDS, ChartKind
from sitegen.kinds.kind import Drawing, Surroundings
from sitegen.score.chart import Chart
from sitegen.score.credits import Credits
from sitegen.source import Passage

CREDITS = Credits("Low Tide", "The Gantry", ("Ada Brandt",), "The Gantry")
FILES = {
    "notation": ["chart-a.svg", "chart-a.mei", "chart-a.musicxml", "chart-a.mid"],
    "changes": ["chart-a.svg", "chart-a.mei", "chart-a.musicxml", "chart-a.mid"],
    "form": ["chart-a.svg", "chart-a.vtt", "chart-a.txt"],
    "excerpt": ["chart-a.svg", "chart-a.mei", "chart-a.musicxml", "chart-a.mid"],
}
EACH_KIND = pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
OF_NOTES = pytest.mark.parametrize(
    "kind", [kind for kind in KINDS if kind.name != "form"], ids=lambda kind: kind.name
)


def read(kind: ChartKind) -> tuple[Chart, Drawing]:
    """Return the kind's example and its drawing."""
    passage = Passage.of(kind.example)
    around = Surroundings("chart-a", "Example 1", source=passage.source, credits=CREDITS)
    chart = kind.read(passage, defaults_of(kind)).chart
    assert chart is not None
    return chart, kind.draw(kind.analyse(chart, around), around)


@EACH_KIND
def test_a_kind_gives_the_files_that_make_sense_for_it(kind: ChartKind) -> None:
    _, drawing = read(kind)
    assert [name for name in FILES[kind.name] if name in drawing.files] == FILES[kind.name]
    assert drawing.rights == "The song belongs to The Gantry."
    assert all(drawing.files.values())


@EACH_KIND
def test_two_runs_give_the_same_bytes(kind: ChartKind) -> None:
    assert read(kind)[1].files == read(kind)[1].files


@OF_NOTES
def test_the_notation_is_what_the_chart_says(kind: ChartKind) -> None:
    chart, drawing = read(kind)
    text = drawing.files["chart-a.musicxml"].decode()
    load_schema().assertValid(etree.fromstring(text.encode()))
    assert_says_the_same(text, chart)


@OF_NOTES
def test_the_drawing_stands_alone_with_its_name(kind: ChartKind) -> None:
    _, drawing = read(kind)
    root = parsed(drawing.files["chart-a.svg"].decode())
    assert root.findtext("{http://www.w3.org/2000/svg}title") == "Example 1"
    assert root.findtext("{http://www.w3.org/2000/svg}desc") == drawing.summary


@OF_NOTES
def test_the_sound_is_a_midi_file_with_notes(kind: ChartKind) -> None:
    _, drawing = read(kind)
    file = MidiFile(file=BytesIO(drawing.files["chart-a.mid"]))
    assert any(message.type == "note_on" for track in file.tracks for message in track)


@OF_NOTES
def test_the_files_say_whose_the_music_is(kind: ChartKind) -> None:
    _, drawing = read(kind)
    for suffix in ("mei", "musicxml"):
        assert "The song belongs to The Gantry." in drawing.files[f"chart-a.{suffix}"].decode()


def test_a_plan_is_in_plain_colours_and_leads_nowhere() -> None:
    kind = next(kind for kind in KINDS if kind.name == "form")
    _, drawing = read(kind)
    file = drawing.files["chart-a.svg"].decode()
    assert "var(" not in file
    assert "<a " not in file
    root = parsed(file)
    box = root.get("viewBox", "").split()
    assert [root.get("width"), root.get("height")] == box[2:]
    names = {"".join(text.itertext()) for text in root.iter("{http://www.w3.org/2000/svg}text")}
    assert {"Verse 1", "Chorus 1"} <= names
