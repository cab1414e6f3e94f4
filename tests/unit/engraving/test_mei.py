"""The MEI of every kind of chart: valid by the schema, and read back as what the chart says."""

import os
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from unit.engraving import samples
from unit.engraving.building import (
    GUITAR,
    SPAN,
    bars,
    fretted_part,
    melody,
    reading,
    struck,
    tab,
    voice_part,
)
from unit.engraving.writing import parsed

from sitegen.analysis.reading import ChartReading
from sitegen.engraving import write_mei
from sitegen.score.chart import Chart, Event, Part
from sitegen.score.instrument import Instrument
from sitegen.score.key import Key

MEI = "{http://www.music-encoding.org/ns/mei}"
ID = "{http://www.w3.org/XML/1998/namespace}id"


def schema_path() -> Path:
    beside = Path(__file__).resolve().parents[4] / "shared" / "reference" / "mei-all-5.1.rng"
    return Path(os.environ.get("SITEGEN_MEI_SCHEMA", beside))


@pytest.mark.parametrize("width", ["wide", "narrow"])
@pytest.mark.parametrize("chart", samples.ALL, ids=lambda make: make.__name__)
def test_the_file_is_valid(chart: samples.Make, width: str) -> None:
    from lxml import etree  # noqa: PLC0415 - only here

    if not schema_path().is_file():
        pytest.skip(f"no MEI schema at {schema_path()}; name one in SITEGEN_MEI_SCHEMA")
    schema = etree.RelaxNG(etree.parse(schema_path()))
    schema.assertValid(etree.fromstring(write_mei(chart(), width)))


def test_the_schema_bites() -> None:
    from lxml import etree  # noqa: PLC0415 - only here

    if not schema_path().is_file():
        pytest.skip(f"no MEI schema at {schema_path()}; name one in SITEGEN_MEI_SCHEMA")
    schema = etree.RelaxNG(etree.parse(schema_path()))
    broken = write_mei(samples.riff()).replace('dur="4"', 'dur="5"')
    assert not schema.validate(etree.fromstring(broken))


@pytest.mark.parametrize("chart", samples.ALL, ids=lambda make: make.__name__)
def test_ids_are_unique(chart: samples.Make) -> None:
    ids = [e.get(ID) for e in parsed(write_mei(chart())).iter() if e.get(ID)]
    assert ids
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("chart", samples.ALL, ids=lambda make: make.__name__)
def test_whatever_is_pointed_to_exists(chart: samples.Make) -> None:
    root = parsed(write_mei(chart()))
    ids = {e.get(ID) for e in root.iter()}
    for element in root.iter():
        for name in ("startid", "endid"):
            if element.get(name):
                assert element.get(name, "").removeprefix("#") in ids


def many_rhythms() -> ChartReading:
    """Return notes across beats and bars in changing divisions: ties, tuplets, off-beat starts."""
    tune = melody(
        "C4:1/2 D4:1 E4:3/2 F4:1/3 G4:1/3 A4:1/3 B4:9/2 C5:2/3 B4:2/3 A4:2/3 G4:1/5 F4:1/5 E4:3/5 "
        "D4:3/4 C#4:1/4 Db4:2 C4:15/2 E4,G4,C5:7/2 r:3/2 F##4:1/2 Bbb4:1 Ab4,A4:5/2"
    )
    length = tune[-1].end
    made = bars("4/4", 8, Fraction(1, 2))
    rest = Event(length, made[-1].end - length, (), SPAN)
    chart = Chart(
        "rhythms", "notation", SPAN, made, key=Key.read("Bb"), parts=(voice_part((*tune, rest)),)
    )
    return reading(chart)


def sounding(part: Part) -> list[tuple[Fraction, Fraction, tuple[int, ...]]]:
    """Return what a part of the chart says: onset, duration, MIDI numbers."""
    events = []
    for event in part.events:
        heard = {note.pitch.midi for note in event.notes if note.pitch is not None}
        if heard:
            events.append((event.onset, event.duration, tuple(sorted(heard))))
    return events


def read_back(mei: str, staff: int) -> list[tuple[Fraction, Fraction, tuple[int, ...]]]:
    """Return what music21 reads on a staff (from 0), tied notes as one.

    music21 skips `ending`, so those are turned into sections first. Notes with x heads are
    left out: they have no pitch to compare.
    """
    from music21 import converter  # noqa: PLC0415 - slow to import

    root = parsed(mei)
    for ending in root.iter(f"{MEI}ending"):
        ending.tag = f"{MEI}section"
        ending.attrib.clear()
    part = converter.parse(ET.tostring(root, encoding="unicode"), format="mei").getElementsByClass(
        "Part"
    )[staff]
    crossed = {e.get(ID) for e in root.iter(f"{MEI}note") if e.get("head.shape") == "x"}
    events: list[tuple[Fraction, Fraction, tuple[int, ...]]] = []
    at = Fraction(0)
    for bar in part.getElementsByClass("Measure"):
        for element in bar.recurse().notes:
            notes = [n for n in getattr(element, "notes", (element,)) if n.id not in crossed]
            length = Fraction(element.duration.quarterLength)
            pitches = tuple(sorted(note.pitch.midi for note in notes))
            onset = at + Fraction(element.getOffsetInHierarchy(bar))
            tie = notes[0].tie.type if notes and notes[0].tie else ""
            if tie in ("stop", "continue"):
                start, before, same = events.pop()
                assert same == pitches
                assert start + before == onset
                events.append((start, before + length, same))
            elif pitches:
                events.append((onset, length, pitches))
        at += Fraction(bar.highestTime)
    return events


PITCHED = [
    (samples.riff, "voice", 0),
    (samples.riff, "guitar", 1),
    (samples.techniques, "guitar", 0),
    (samples.band, "voice", 0),
    (samples.band, "bass", 1),
    (samples.song, "voice", 0),
    (samples.low_keys, "keys", 0),
    (many_rhythms, "voice", 0),
]


@pytest.mark.parametrize(
    ("chart", "name", "staff"),
    PITCHED,
    ids=[f"{make.__name__}-{name}" for make, name, _ in PITCHED],
)
def test_music21_reads_what_the_chart_says(chart: samples.Make, name: str, staff: int) -> None:
    made = chart()
    part = next(part for part in made.chart.parts if part.name == name)
    said = sounding(part)
    assert said
    assert read_back(write_mei(made), staff) == said


def test_frets_are_the_charts_frets() -> None:
    made = samples.techniques()
    root = parsed(write_mei(made))
    frets = [
        (int(note.get("tab.course", 0)), int(note.get("tab.fret", -1)))
        for note in root.iter(f"{MEI}note")
        if note.get("tab.fret")
    ]
    said = [
        (note.string, note.fret or 0)
        for event in made.chart.parts[0].events
        for note in event.notes
    ]
    assert frets == said


def drum_onsets(root: ET.Element, layer: int) -> Iterator[tuple[Fraction, tuple[str, ...]]]:
    """Yield onset and General MIDI numbers of everything struck in a layer of staff 1."""
    at = Fraction(0)
    for measure in root.iter(f"{MEI}measure"):
        for element in measure.findall(f".//{MEI}layer")[layer - 1].iter():
            if element.get("dur") and element.get("grace") is None:
                notes = [n.get("pnum") for n in element.iter(f"{MEI}note")]
                if notes:
                    yield at, tuple(sorted(filter(None, notes)))
                dots = Fraction(3, 2) if element.get("dots") else 1
                at += Fraction(4, int(element.get("dur", 1))) * dots
            elif element.tag == f"{MEI}mSpace":
                at += 4


@pytest.mark.parametrize("layer", [1, 2])
def test_drums_are_struck_when_the_chart_says(layer: int) -> None:
    made = samples.kit()
    said = [
        (event.onset, tuple(sorted(str(note.midi) for note in event.notes)))
        for event in made.chart.parts[0].voices[layer - 1]
        if event.notes
    ]
    assert list(drum_onsets(parsed(write_mei(made)), layer)) == said


def test_a_silent_bar_is_one_rest_and_a_silent_pickup_is_not() -> None:
    tune = melody("r:1 C4:4 r:4")
    chart = Chart(
        "rests", "notation", SPAN, bars("4/4", 2, Fraction(1)), parts=(voice_part(tune),)
    )
    measures = list(parsed(write_mei(reading(chart))).iter(f"{MEI}measure"))
    assert measures[0].get("metcon") == "false"
    assert [len(list(m.iter(f"{MEI}mRest"))) for m in measures] == [0, 0, 1]
    assert [len(list(m.iter(f"{MEI}rest"))) for m in measures] == [1, 0, 0]


def test_line_breaks_are_the_authors_in_the_wide_file_only() -> None:
    made = samples.song()
    assert write_mei(made).count("<sb") == 3
    assert "<sb" not in write_mei(made, "narrow")


def test_a_changed_meter_is_written_once_on_each_staff() -> None:
    root = parsed(write_mei(samples.band()))
    changed = list(root.iter(f"{MEI}scoreDef"))[1]
    signs = list(changed.iter(f"{MEI}meterSig"))
    assert [sign.get("count") for sign in signs if not sign.get("visible")] == ["4", "4", "4"]


def test_a_tablature_under_its_staff_knows_the_meter_without_showing_it() -> None:
    root = parsed(write_mei(samples.techniques()))
    shown = [sign.get("visible") for sign in root.iter(f"{MEI}meterSig")]
    assert shown == [None, "false"]


def test_accidentals_hold_to_the_end_of_the_bar() -> None:
    tune = melody("F#4:1 F#4:1 F4:1 Bb4:1 F4:1 F#4:7 F#4:1 B4:3")
    chart = Chart(
        "signs", "notation", SPAN, bars("4/4", 4), key=Key.read("F"), parts=(voice_part(tune),)
    )
    notes = parsed(write_mei(reading(chart))).iter(f"{MEI}note")
    signs = [(n.get("pname"), n.get("accid"), n.get("accid.ges")) for n in notes]
    assert signs == [
        ("f", "s", None),
        ("f", None, "s"),
        ("f", "n", None),
        ("b", None, "f"),
        ("f", None, None),
        ("f", "s", None),
        ("f", None, "s"),  # tied over the bar line
        ("f", "s", None),
        ("b", "n", None),
    ]


def test_roles_are_classes_of_notes_and_labels() -> None:
    root = parsed(write_mei(samples.riff()))
    voice = [n.get("type") for n in root.iter(f"{MEI}note") if n.get("type")]
    labels = [(h.get("type"), "".join(h.itertext())) for h in root.iter(f"{MEI}harm")]
    assert voice[:4] == ["chord-tone", "tension", "non-chord", "chord-tone"]
    assert ("degree tension", "11") in labels
    assert ("degree non-chord", "(♭3)") in labels


def test_words_know_their_places() -> None:
    root = parsed(write_mei(samples.riff()))
    words = [(s.text, s.get("wordpos"), s.get("con")) for s in root.iter(f"{MEI}syl")]
    assert words[:5] == [
        ("Slow", None, None),
        ("wa", "i", "d"),
        ("ter", "t", None),
        ("ris", "i", "d"),
        ("ing", "t", None),
    ]


def test_a_held_syllable_is_led_on_by_a_line() -> None:
    root = parsed(write_mei(samples.song()))
    held = [s.text for s in root.iter(f"{MEI}syl") if s.get("con") == "u"]
    assert held == ["ter", "bour", "low", "clear", "and", "but", "tide", "moon"]


def test_an_unlabelled_chart_has_no_degrees() -> None:
    made = samples.riff()
    silent = replace(made, chart=replace(made.chart, label="none", roman=False))
    harms = [h.get("n") for h in parsed(write_mei(silent)).iter(f"{MEI}harm")]
    assert set(harms) == {"chords"}


def test_marks_are_articulations_fermatas_and_swells() -> None:
    root = parsed(write_mei(samples.low_keys()))
    assert [a.get("artic") for a in root.iter(f"{MEI}artic")] == ["acc", "stacc", "ten", "stacc"]
    assert [f.get("startid") for f in root.iter(f"{MEI}fermata")] == ["#keys-2-1"]
    swell = next(root.iter(f"{MEI}hairpin"))
    assert (swell.get("form"), swell.get("tstamp"), swell.get("tstamp2")) == ("dim", "3", "0m+6")


def test_a_run_of_hammer_ons_and_pull_offs_is_one_slur() -> None:
    root = parsed(write_mei(samples.techniques()))
    slurs = [(s.get("startid"), s.get("endid")) for s in root.iter(f"{MEI}slur")]
    assert slurs[:2] == [
        ("#guitar-0-4", "#guitar-0-4_1_2"),
        ("#guitar-1-1", "#guitar-1-2"),
    ]


def test_tuplets_are_not_numbered_again_in_the_tablature() -> None:
    events = tab(GUITAR, "1.0:1/3 1.1:1/3 1.3:1/3 1.5:3")
    chart = Chart("trip", "notation", SPAN, bars("4/4", 1), parts=(fretted_part(events),))
    tuplets = parsed(write_mei(reading(chart))).iter(f"{MEI}tuplet")
    assert [t.get("num.visible") for t in tuplets] == [None, "false"]


STROKES = [
    ("HH:1/2 HH:1/2 HH:3", ["8", "8", "4", "r2"]),
    ("r:1/2 HH:1 HH:5/2", ["r8", "8", "r8", "8", "r2"]),
    ("HH:1/7 HH:5/7 HH:1/7 r:3", ["16", "4", "r16", "16", "r4", "r2"]),
]  # common practice, no source: a stroke is written up to the end of its beat


@pytest.mark.parametrize(("strokes", "expected"), STROKES)
def test_a_stroke_ends_with_its_beat(strokes: str, expected: list[str]) -> None:
    part = Part("drums", Instrument("drums"), (struck(strokes),), ("drums",))
    chart = Chart("hits", "notation", SPAN, bars("4/4", 1), parts=(part,))
    layer = next(parsed(write_mei(reading(chart))).iter(f"{MEI}layer"))
    values = [
        ("r" if e.tag.endswith("rest") else "") + e.get("dur", "")
        for e in layer.iter()
        if e.get("dur")
    ]
    assert values == expected


CLEFS = [("C5 E5 G5", "G"), ("C3 E3 B3", "F")]


@pytest.mark.parametrize(("names", "shape"), CLEFS)
def test_a_part_gets_the_clef_of_its_range(names: str, shape: str) -> None:
    tune = melody(" ".join(f"{name}:1" for name in names.split()))
    chart = Chart("clef", "notation", SPAN, bars("3/4", 1), parts=(voice_part(tune, "keys"),))
    clef = next(parsed(write_mei(reading(chart))).iter(f"{MEI}clef"))
    assert (clef.get("shape"), clef.get("dis")) == (shape, None)


@pytest.mark.parametrize(("staff", "expected"), [(1, ("G", "8")), (2, ("TAB", None))])
def test_a_guitar_reads_an_octave_above_what_sounds(
    staff: int, expected: tuple[str, str | None]
) -> None:
    clefs = list(parsed(write_mei(samples.riff())).iter(f"{MEI}clef"))
    assert (clefs[staff].get("shape"), clefs[staff].get("dis")) == expected


def test_a_roll_is_tied_and_what_was_struck_with_it_is_not() -> None:
    part = Part("drums", Instrument("drums"), (struck("r:3 SDz,CC:2 r:3"),), ("drums",))
    chart = Chart("roll", "notation", SPAN, bars("4/4", 2), parts=(part,))
    notes = [
        (n.get("pnum"), n.get("tie")) for n in parsed(write_mei(reading(chart))).iter(f"{MEI}note")
    ]
    assert notes == [("38", "i"), ("49", None), ("38", "t")]
