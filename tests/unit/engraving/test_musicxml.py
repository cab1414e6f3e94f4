"""The MusicXML of every kind of chart: valid, and read back as what the chart says."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from typing import Any
from xml.etree.ElementTree import Element

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree
from unit.engraving import samples
from unit.engraving.building import (
    GUITAR,
    LOW_GUITAR,
    SPAN,
    bars,
    changes,
    fretted_part,
    melody,
    reading,
    struck,
    sung,
    tab,
    voice_part,
)
from unit.engraving.reading_musicxml import assert_says_the_same, load_schema, read_musicxml
from unit.engraving.test_any_chart import guitar_music
from unit.engraving.test_mei import many_rhythms
from unit.engraving.writing import parsed

from sitegen.engraving.musicxml import write_musicxml
from sitegen.score.chart import Bar, Chart, Event, Part, StretchMark
from sitegen.score.credits import Credits
from sitegen.score.drums import KIT
from sitegen.score.instrument import Fretted, Instrument, Reading
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo

ALL: list[samples.Make] = [*samples.ALL, many_rhythms]
EACH = pytest.mark.parametrize("chart", ALL, ids=lambda make: make.__name__)


def written(chart: Chart) -> Element:
    return parsed(write_musicxml(reading(chart)))


def chart_of(*parts: Part, **fields: Any) -> Chart:  # noqa: ANN401
    length = max((part.events[-1].end for part in parts), default=Fraction(4))
    fields.setdefault("bars", bars("4/4", -(-int(length) // 4)))
    return Chart("made", "notation", SPAN, parts=parts, **fields)


def texts(root: Element, path: str) -> list[str]:
    return [element.text or "" for element in root.findall(path)]


def validate(text: str) -> None:
    load_schema().assertValid(etree.fromstring(text.encode()))


@EACH
def test_the_file_is_valid(chart: samples.Make) -> None:
    validate(write_musicxml(chart(), Credits("Low Tide", "The Gantry", ("A. Brandt",), "Nobody")))


def test_the_schema_bites() -> None:
    broken = write_musicxml(samples.riff()).replace("<type>quarter</type>", "<type>4th</type>")
    assert not load_schema().validate(etree.fromstring(broken.encode()))


@EACH
def test_music21_reads_what_the_chart_says(chart: samples.Make) -> None:
    made = chart()
    assert_says_the_same(write_musicxml(made), made.chart)


def test_a_wrong_note_would_be_noticed() -> None:
    made = samples.riff()
    wrong = write_musicxml(made).replace("<octave>5</octave>", "<octave>4</octave>", 1)
    with pytest.raises(AssertionError):
        assert_says_the_same(wrong, made.chart)


@settings(deadline=None, max_examples=25)
@given(guitar_music(), st.booleans(), st.integers(0, 5))
def test_any_guitar_part_is_read_back(
    events: tuple[Event, ...], with_staff: bool, capo: int
) -> None:
    stretches = (
        StretchMark("palm mute", Fraction(1), Fraction(3), SPAN),
        StretchMark("let ring", Fraction(3), Fraction(8), SPAN),
        StretchMark("crescendo", Fraction(1, 2), Fraction(5), SPAN),
    )
    shows = ("staff", "tab") if with_staff else ("tab",)
    fretted = replace(GUITAR, capo=capo)
    chart = chart_of(fretted_part(events, fretted, stretches=stretches, shows=shows))
    text = write_musicxml(reading(chart))
    validate(text)
    assert_says_the_same(text, chart)


@st.composite
def drum_music(draw: st.DrawFn) -> str:
    words = st.sampled_from([f"{label}{mark}" for label in KIT for mark in ("", "!", "(", "f")])
    hits = st.lists(words, max_size=3, unique_by=lambda word: word[:2]).map(",".join)
    lengths = st.sampled_from(["1/2", "1/4", "1/3", "3/4", "1"])
    many = draw(st.lists(st.tuples(hits, lengths), min_size=1, max_size=8))
    length = sum(Fraction(length) for _, length in many)
    return " ".join([*(f"{hit or 'r'}:{length}" for hit, length in many), f"r:{8 - length}"])


@settings(deadline=None, max_examples=25)
@given(drum_music(), st.booleans())
def test_any_drum_part_is_valid_and_struck_when_the_chart_says(music: str, two: bool) -> None:
    feet = struck("BD:1 BD:1 r:6")
    voices = (struck(music), feet) if two else (struck(music),)
    chart = chart_of(Part("drums", Instrument("drums"), voices, ("drums",)), bars=bars("4/4", 2))
    text = write_musicxml(reading(chart))
    validate(text)
    said = Counter(
        (event.onset, note.midi) for voice in voices for event in voice for note in event.notes
    )
    assert Counter(drum_hits(parsed(text))) == said


def drum_hits(root: Element) -> list[tuple[Fraction, int]]:
    """Return onset and General MIDI key of all that is struck, grace notes left out."""
    keys = {
        instrument.get("id"): int(instrument.findtext("midi-unpitched", "0")) - 1
        for instrument in root.iter("midi-instrument")
    }
    divisions = int(root.findtext(".//divisions", "1"))
    hits, at, before = [], 0, 0
    for element in root.findall("./part/measure/*"):
        length = int(element.findtext("duration", "0"))
        if element.tag == "backup":
            at -= length
        elif element.tag == "note" and element.find("grace") is None:
            onset = before if element.find("chord") is not None else at
            instrument = element.find("instrument")
            if instrument is not None:
                hits.append((Fraction(onset, divisions), keys[instrument.get("id")]))
            if element.find("chord") is None:
                before, at = at, at + length
    return hits


def test_a_guitar_is_written_an_octave_up_and_says_so() -> None:
    root = written(chart_of(fretted_part(tab(GUITAR, "1.0:4"))))
    assert texts(root, ".//pitch/octave") == ["5"]
    assert texts(root, ".//transpose/*") == ["0", "0", "-1"]
    assert texts(root, ".//clef/sign") == ["G"]
    assert root.find(".//clef-octave-change") is None


def test_a_capo_and_a_tuning_are_told_and_what_sounds_is_right() -> None:
    fretted = Fretted(LOW_GUITAR.tuning, LOW_GUITAR.standard, capo=2)
    music = tab(fretted, "6.0:2 1.3:2")
    for shows in (("staff", "tab"), ("tab",)):
        chart = chart_of(fretted_part(music, fretted, shows=shows))
        root = written(chart)
        assert texts(root, ".//staff-details/capo") == ["2"]
        assert texts(root, ".//words") == ["Tuning E♭ A♭ D♭ G♭ B♭ E♭, capo 2"]
        assert texts(root, ".//technical/fret") == ["0", "3"]
        # E♭2 two frets up is F2; E♭4 five frets up is A♭4.
        heard = read_musicxml(write_musicxml(reading(chart)))
        assert [midi for _, midi, _ in heard.notes[0]] == [41, 68]
    assert texts(root, ".//staff-tuning/tuning-step") == ["E", "A", "D", "G", "B", "E"]
    assert texts(root, ".//staff-tuning/tuning-alter") == ["-1"] * 6


def test_strings_make_no_tablature_of_a_staff() -> None:
    """Check with verovio's own reader, which goes by the strings that a staff names."""
    import verovio  # noqa: PLC0415 - heavy

    toolkit = verovio.toolkit()
    for chart, is_tab in ((samples.riff, False), (samples.tablature_alone, True)):
        assert toolkit.loadData(write_musicxml(chart()))
        assert ('notationtype="tab' in toolkit.getMEI()) is is_tab


# A tenor saxophone sounds a major ninth lower than it reads, an alto a major sixth, a soprano
# recorder an octave higher (common practice, no source).
READINGS = [
    (Interval(8, 14), "-1", ["-1", "-2", "-1"]),
    (Interval(5, 9), "0", ["-5", "-9"]),
    (Interval(-7, -12), "-3", ["0", "0", "1"]),
]


@pytest.mark.parametrize(("interval", "fifths", "transposition"), READINGS)
def test_a_transposing_part_reads_in_its_key(
    interval: Interval, fifths: str, transposition: list[str]
) -> None:
    instrument = Instrument("horns", reading=Reading("reads elsewhere", interval))
    part = Part("sax", instrument, (melody("Eb4:1 G4:1 Bb4:2"),), ("staff",))
    chart = chart_of(part, key=Key.read("Eb"), chords=changes("4 Eb maj7 G"))
    root = written(chart)
    assert texts(root, ".//key/fifths") == [fifths]
    assert texts(root, ".//transpose/*") == transposition
    assert_says_the_same(write_musicxml(reading(chart)), chart)
    root_step = interval.above_name(Key.read("Eb").tonic)
    assert texts(root, ".//harmony/root/root-step") == [root_step.letter]


def test_notation_and_tablature_are_one_staff_with_strings_and_frets() -> None:
    root = written(chart_of(fretted_part(tab(GUITAR, "1.3,2.0,6.3:4"))))
    assert root.find(".//staves") is None
    assert texts(root, ".//technical/string") == ["6", "2", "1"]
    assert texts(root, ".//technical/fret") == ["3", "0", "3"]


def test_a_tablature_alone_has_its_clef_and_lines() -> None:
    root = parsed(write_musicxml(samples.tablature_alone()))
    assert texts(root, ".//clef/sign") == ["TAB"]
    assert texts(root, ".//staff-lines") == ["7"]
    assert root.find(".//key") is None
    assert root.find(".//accidental") is None


def test_a_pickup_and_the_rest_of_a_split_bar_are_not_counted() -> None:
    meter = Meter.read("4/4")
    made = (
        Bar(0, meter, Fraction(0), Fraction(1), SPAN, skipped=Fraction(3)),
        Bar(1, meter, Fraction(1), Fraction(3), SPAN, repeat_end=True),
        Bar(1, meter, Fraction(4), Fraction(1), SPAN, skipped=Fraction(3), repeat_start=True),
        Bar(2, meter, Fraction(5), Fraction(4), SPAN),
    )
    root = written(chart_of(voice_part(melody("C5:1 D5:3 E5:1 F5:4")), bars=made))
    measures = [(m.get("number"), m.get("implicit")) for m in root.iter("measure")]
    assert measures == [("0", "yes"), ("1", None), ("X1", "yes"), ("2", None)]


def test_repeats_and_endings_stand_in_the_bar_lines() -> None:
    root = parsed(write_musicxml(samples.band()))
    lines = [
        (
            line.get("location"),
            line.findtext("bar-style"),
            [(e.get("number"), e.get("type")) for e in line.iter("ending")],
            [r.get("direction") for r in line.iter("repeat")],
        )
        for line in root.findall("./part[@id='P1']//barline")
    ]
    assert lines == [
        ("left", "heavy-light", [], ["forward"]),
        ("left", None, [("1", "start")], []),
        ("right", "light-heavy", [("1", "stop")], ["backward"]),
        ("left", None, [("2", "start")], []),
        ("right", "light-light", [("2", "discontinue")], []),
    ]


def test_an_ending_for_several_turns_names_them_all() -> None:
    made = (
        replace(bars("4/4", 1)[0], ending="1.-3.", repeat_end=True, ending_closes=True),
        replace(bars("4/4", 2)[1], ending="4."),
    )
    root = written(chart_of(voice_part(melody("C5:8")), bars=made))
    endings = [(e.get("number"), e.get("type"), e.text) for e in root.iter("ending")]
    assert endings == [
        ("1, 2, 3", "start", "1.-3."),
        ("1, 2, 3", "stop", None),
        ("4", "start", "4."),
        ("4", "discontinue", None),
    ]


METERS = [("4/4", "4"), ("6/8", "6"), ("3/4", "3"), ("7/8", "2+2+3"), ("8/8 (3+3+2)", "3+3+2")]


@pytest.mark.parametrize(("meter", "beats"), METERS)
def test_a_meter_tells_groups_that_nobody_would_guess(meter: str, beats: str) -> None:
    made = bars(meter, 1)
    tune = melody(f"C5:{made[0].length}")
    assert texts(written(chart_of(voice_part(tune), bars=made)), ".//time/beats") == [beats]


def test_tempo_and_swing_are_for_the_eye_and_for_a_player() -> None:
    tempo = Tempo(Fraction(60), Fraction(3, 2))
    tune = voice_part(melody("C5:4"))
    root = written(chart_of(tune, tempo=tempo, feel="swing"))
    assert texts(root, ".//metronome/*") == ["quarter", "", "60"]
    assert texts(root, ".//words") == ["Swing"]
    assert [s.get("tempo") for s in root.iter("sound")] == ["90"]
    assert texts(root, ".//swing/*") == ["2", "1", "eighth"]


def test_triplets_are_ratios_under_one_bracket() -> None:
    root = written(chart_of(voice_part(melody("C5:1/3 r:1/3 E5:1/3 F5:3"))))
    ratios = [note.findtext("time-modification/actual-notes") for note in root.iter("note")]
    assert ratios == ["3", "3", "3", None]
    assert [t.get("type") for t in root.iter("tuplet")] == ["start", "stop"]
    assert texts(root, ".//tuplet-type") == ["eighth", "eighth"]
    assert texts(root, ".//duration") == ["1", "1", "1", "9"]


BEAMS = [
    ("C5:1/2 D5:1/2 r:3", [["begin"], ["end"], []]),
    ("C5:3/4 D5:1/4 r:3", [["begin"], ["end", "backward hook"], []]),
    ("C5:1/4 D5:3/4 r:3", [["begin", "forward hook"], ["end"], []]),
    (
        "C5:1/2 D5:1/4 E5:1/4 r:3",
        [["begin"], ["continue", "begin"], ["end", "end"], []],
    ),
    (
        "C5:1/4 r:1/4 D5:1/4 E5:1/4 r:3",
        [["begin", "forward hook"], [], ["continue", "begin"], ["end", "end"], []],
    ),
]


@pytest.mark.parametrize(("tune", "states"), BEAMS)
def test_beams_are_told_level_by_level(tune: str, states: list[list[str]]) -> None:
    root = written(chart_of(voice_part(melody(tune))))
    found = [[b.text or "" for b in note.iter("beam")] for note in root.iter("note")]
    assert found[: len(states)] == states


def test_a_note_over_the_bar_line_is_tied_for_ear_and_eye() -> None:
    root = written(chart_of(voice_part(melody("r:3 F#5:2 r:3"))))
    sounding = [note for note in root.iter("note") if note.find("pitch") is not None]
    ties = [[t.get("type") for t in note.iter("tie")] for note in sounding]
    assert ties == [["start"], ["stop"]]
    assert [t.get("type") for t in root.iter("tied")] == ["start", "stop"]
    assert texts(root, ".//accidental") == ["sharp"]


def test_words_know_their_places_and_their_verses() -> None:
    tune = sung(melody("C5:1 D5:1 E5:1 F5:1"), "wa- ter- falls _")
    tune = sung(tune, "all the way down", 2)
    root = written(chart_of(voice_part(tune)))
    words = [
        (w.get("number"), w.findtext("syllabic"), w.findtext("text"), w.find("extend") is not None)
        for w in root.iter("lyric")
    ]
    assert words == [
        ("1", "begin", "wa", False),
        ("2", "single", "all", False),
        ("1", "middle", "ter", False),
        ("2", "single", "the", False),
        ("1", "end", "falls", True),
        ("2", "single", "way", False),
        ("2", "single", "down", False),
    ]


def test_what_the_hands_do_stands_with_the_notes() -> None:
    root = parsed(write_musicxml(samples.techniques()))
    joins = [(e.tag, e.get("type")) for e in root.findall(".//technical/*") if e.get("type")]
    assert joins == [
        ("hammer-on", "start"),
        ("hammer-on", "stop"),
        ("hammer-on", "start"),
        ("hammer-on", "stop"),
        ("pull-off", "start"),
        ("pull-off", "stop"),
    ]
    assert texts(root, ".//bend/bend-alter") == ["2", "3"]
    assert [h.get("parentheses") for h in root.iter("notehead") if h.text == "normal"] == ["yes"]
    assert [h.text for h in root.iter("notehead")] == ["x", "x", "normal", "diamond"]
    assert len(root.findall(".//harmonic/natural")) == 1
    assert [e.tag for e in root.findall(".//articulations/*")] == ["scoop", "falloff"]
    # Two dead notes, then a chord of two and a ghost note under the palm.
    assert texts(root, ".//play/mute") == ["on", "on", "palm", "palm", "palm"]
    assert texts(root, ".//words") == ["with a pick", "P.M.", "let ring"]
    assert [w.get("type") for w in root.iter("wedge")] == ["crescendo", "stop"]


def test_a_slide_leads_to_the_next_note_of_its_string() -> None:
    part = fretted_part(tab(GUITAR, "3.5:2 3.7:2", n0={"joins": "slide"}))
    slides = [
        (slide.get("type"), slide.get("number"), note.findtext(".//fret"))
        for note in written(chart_of(part)).iter("note")
        for slide in note.iter("slide")
    ]
    assert slides == [("start", "3", "5"), ("stop", "3", "7")]


def test_drums_have_a_place_a_head_and_an_instrument_each() -> None:
    root = parsed(write_musicxml(samples.kit()))
    names = dict(
        zip(texts(root, ".//instrument-name"), texts(root, ".//midi-unpitched"), strict=True)
    )
    # General MIDI Level 1 percussion keys, counted from 1 as the standard does.
    assert names["snare drum"] == "39"
    assert names["hi-hat"] == "43"
    assert names["open hi-hat"] == "47"
    assert names["bass drum"] == "37"
    assert set(texts(root, ".//midi-channel")) == {"10"}
    assert [h.get("parentheses") for h in root.iter("notehead") if h.text == "normal"] == ["yes"]
    assert len(root.findall(".//note/grace")) == 1
    assert texts(root, ".//tremolo") == ["3"]
    assert len(root.findall(".//technical/open")) == 1
    assert {s.text for s in root.iter("stem")} == {"up", "down"}


def test_a_chord_in_the_middle_of_a_note_has_its_offset() -> None:
    root = written(chart_of(voice_part(melody("C5:4")), chords=changes("3/2 C -", "5/2 F -")))
    assert texts(root, ".//divisions") == ["2"]
    assert texts(root, ".//harmony/offset") == ["3"]


def test_chords_alone_are_slashes_over_rests() -> None:
    root = parsed(write_musicxml(samples.chords_alone()))
    assert [r.get("measure") for r in root.iter("rest")] == ["yes"] * 4
    assert [s.get("type") for s in root.findall(".//measure-style/slash")] == ["start"]
    assert [k.get("text") for k in root.iter("kind")] == ["", "m7", "m7", "7", ""]
    assert texts(root, ".//part-name") == ["Chords"]


def test_the_authors_lines_are_kept() -> None:
    root = parsed(write_musicxml(samples.song()))
    broken = [m.get("number") for m in root.iter("measure") if m.find("print") is not None]
    assert broken == ["3", "5", "7"]


def test_the_head_says_whose_the_music_is() -> None:
    credits_ = Credits("Low Tide", "The Gantry", ("Ada Brandt", "Wim Okoro"), "The Gantry")
    root = parsed(write_musicxml(samples.riff(), credits_))
    assert root.findtext("work/work-title") == "Low Tide"
    assert root.findtext("movement-title") == "Opening figure"
    creators = [(c.get("type"), c.text) for c in root.iter("creator")]
    assert creators == [
        ("composer", "Ada Brandt"),
        ("composer", "Wim Okoro"),
        ("artist", "The Gantry"),
    ]
    assert root.findtext("identification/rights") == "The song belongs to The Gantry."


@EACH
def test_the_same_chart_gives_the_same_bytes(chart: samples.Make) -> None:
    assert write_musicxml(chart()) == write_musicxml(chart())
