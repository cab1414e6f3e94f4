"""The account of a chart in words, on charts built by hand."""

from dataclasses import replace
from fractions import Fraction

from msgspec import structs

from sitegen.analysis.account import account, summary
from sitegen.analysis.reading import ChartReading, ChordReading, NoteReading
from sitegen.score.chart import (
    Bar,
    Chart,
    ChordEvent,
    Event,
    Note,
    Part,
    Remark,
    StretchMark,
    Syllable,
)
from sitegen.score.chord import Chord, NoChord
from sitegen.score.drums import KIT
from sitegen.score.instrument import STANDARD, TUNINGS, Fretted, Instrument
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch, PitchName
from sitegen.score.role import Role
from sitegen.score.tempo import Tempo
from sitegen.source import Span

HERE = Span(1, 1, 1, 2)
COMMON = Meter.read("4/4")
VOICE = Instrument("voice")
GUITAR = Instrument(
    "guitar", Fretted(TUNINGS["guitar", "half-step down", 6], STANDARD["guitar", 6])
)


def bars(count: int, meter: Meter = COMMON, first: int = 1) -> tuple[Bar, ...]:
    return tuple(
        Bar(first + n, meter, n * meter.length, meter.length, HERE, new_meter=n == 0)
        for n in range(count)
    )


def events(*written: str) -> tuple[Event, ...]:
    """Return events from `pitch:quarters` and `r:quarters`, one after the other."""
    onset, found = Fraction(0), []
    for word in written:
        name, length = word.split(":")
        notes = () if name == "r" else tuple(Note(HERE, Pitch.read(n)) for n in name.split(","))
        found.append(Event(onset, Fraction(length), notes, HERE))
        onset += Fraction(length)
    return tuple(found)


def chart(*parts: Part, count: int = 1, **given: object) -> Chart:
    made = Chart("opening", "notation", HERE, bars(count), parts=parts)
    return replace(made, **given)  # type: ignore[arg-type]


def voice(*written: str, name: str = "voice") -> Part:
    return Part(name, VOICE, (events(*written),), ("staff",))


def told(made: Chart, **found: object) -> tuple[tuple[str, tuple[str, ...]], ...]:
    return account(replace(ChartReading(made, (), ()), **found))  # type: ignore[arg-type]


def chord(root: str, quality: str, bass: str = "") -> Chord:
    name = PitchName.read(root)
    return Chord(name, quality, (name,), ("R",), PitchName.read(bass) if bass else name)


def test_names_notes_with_count_octave_and_length_in_words() -> None:
    made = chart(voice("F5:1", "Ab5:3/2", "C#5:1/2", "r:1"))
    said = (
        "Voice: on 1: F 5, quarter; on 2: A flat 5, dotted quarter; "
        "on the and of 3: C sharp 5, eighth; on 4: rest, quarter."
    )
    assert told(made) == (("Bar 1", ("In 4/4.", said)),)


def test_says_no_sign_that_a_screen_reader_skips() -> None:
    part = Part("guitar", GUITAR, (events("Eb4:1", "F##4:1", "Bbb3,Gb3:2"),), ("staff",))
    made = chart(part, sections=(Remark(Fraction(0), "Verse in B♭", HERE),))
    said = " ".join(s for _, sentences in told(made) for s in sentences)
    assert not set(said) & set("♭♯#°ø")
    assert "E flat 4" in said
    assert "F double sharp 4" in said
    assert "B double flat 3 with G flat 3" in said


def test_says_where_a_note_is_held_over_the_bar_line() -> None:
    made = chart(voice("C4:2", "D4:4", "r:2"), count=2)
    (_, first), (_, second) = told(made)
    assert "on 3: D 4, held for 4 beats, past the bar line." in first[-1]
    assert second == ("Voice: held over, 2 beats of this bar; on 3: rest, half.",)


def test_counts_beats_of_the_meters_own_unit() -> None:
    seven = Meter.read("7/8")
    part = voice("C4:3/2", "D4:5/4", "E4:3/4")
    ((_, sentences),) = told(chart(part, bars=bars(1, seven)))
    assert sentences[0] == "In 7/8."
    assert sentences[1] == (
        "Voice: on 1: C 4, dotted quarter; on 4: D 4, held for 2 1/2 beats; "
        "on the and of 6: E 4, dotted eighth."
    )


def test_names_tuplets() -> None:
    made = chart(voice("C4:1/3", "D4:1/3", "E4:1/3", "F4:1/5", "G4:4/5", "r:2"))
    ((_, sentences),) = told(made)
    assert "on 1: C 4, triplet eighth; on the la of 1: D 4, triplet eighth" in sentences[1]
    assert "on 2: F 4, quintuplet sixteenth; on 2 and 1/5: G 4, quintuplet quarter" in sentences[1]


def test_says_many_alike_in_a_row_once() -> None:
    made = chart(voice(*["E4:1/2"] * 7, "G4:1/2"))
    ((_, sentences),) = told(made)
    assert sentences[1] == ("Voice: from 1, 7 times: E 4, eighth; on the and of 4: G 4, eighth.")


def test_two_alike_are_said_one_by_one() -> None:
    ((_, sentences),) = told(chart(voice("E4:1", "E4:1", "r:2")))
    assert sentences[1].startswith("Voice: on 1: E 4, quarter; on 2: E 4, quarter;")


def test_refers_to_an_earlier_bar_with_the_same_music() -> None:
    made = chart(voice(*["E4:2", "G4:2"] * 3), count=3)
    assert [sentences[-1] for _, sentences in told(made)[1:]] == ["As bar 1.", "As bar 1."]


def test_refers_to_one_part_where_only_that_repeats() -> None:
    riff = voice(*["E4:1", "F4:1", "G4:1", "A4:1"] * 2, name="lead")
    made = chart(riff, voice("C5:4", "D5:4"), count=2)
    assert told(made)[1][1] == ("Lead: as in bar 1.", "Voice: on 1: D 5, whole.")


def test_a_chord_that_differs_keeps_bars_apart() -> None:
    made = chart(voice("E4:4", "E4:4"), count=2)
    chords = tuple(
        ChordReading(n + 1, Fraction(1), Fraction(4 * n), Fraction(4), chord(root, ""))
        for n, root in enumerate("CA")
    )
    assert told(made, chords=chords)[1][1] == ("Chord: A major on 1.", "Voice: on 1: E 4, whole.")


def test_says_chords_with_numerals_and_those_that_go_on() -> None:
    made = chart(count=2)
    chords = (
        ChordReading(1, Fraction(1), Fraction(0), Fraction(2), chord("Eb", "sus2"), "Isus2"),
        ChordReading(1, Fraction(3), Fraction(2), Fraction(6), chord("Gb", "m7♭5", "Bbb"), "ii7"),
    )
    (_, first), (_, second) = told(made, chords=chords)
    assert first[-1] == (
        "Chords: E flat suspended 2 (one suspended 2) on 1; "
        "G flat minor 7 flat 5 over B double flat (two minor 7) on 3."
    )
    assert second == ("Chord: G flat minor 7 flat 5 over B double flat goes on.",)


def test_says_that_no_chord_sounds() -> None:
    silent = ChordReading(1, Fraction(1), Fraction(0), Fraction(4), NoChord())
    assert told(chart(), chords=(silent,))[0][1][-1] == "Chord: no chord on 1."


def test_says_degrees_and_marks_notes_outside_the_chord() -> None:
    made = chart(voice("F5:2", "E5:2"))
    ninth, eleventh = (
        NoteReading("voice", 0, 1, 1 + e.onset, e.onset, e.duration, e.notes[0])
        for e in made.parts[0].events
    )
    heard = (
        structs.replace(ninth, degree="9", role=Role.TENSION),
        structs.replace(eleventh, degree="♯11", role=Role.NON_CHORD_TONE),
    )
    assert told(made, notes=heard)[0][1][-1] == (
        "Voice: on 1: F 5, degree 9, half; on 3: E 5, degree sharp 11 (non-chord tone), half."
    )


def test_says_string_fret_and_both_names_of_a_detuned_guitar() -> None:
    low = Note(HERE, Pitch.read("Eb2"), Pitch.read("E2"), string=6, fret=0)
    dead = Note(HERE, string=5, dead=True)
    played = (
        Event(Fraction(0), Fraction(2), (low, replace(low, string=4, fret=2)), HERE),
        Event(Fraction(2), Fraction(2), (dead,), HERE),
    )
    part = Part("guitar", GUITAR, (played,), ("staff", "tab"))
    assert told(chart(part))[0][1][-1] == (
        "Guitar: on 1: string 6 open, E flat 2, fingered E 2 "
        "with string 4 fret 2, E flat 2, fingered E 2, half; on 3: string 5 dead, half."
    )


def test_a_pitch_that_is_fingered_as_it_sounds_is_named_once() -> None:
    note = Note(HERE, Pitch.read("E2"), Pitch.read("E2"), string=6, fret=0)
    part = Part("bass", GUITAR, ((Event(Fraction(0), Fraction(4), (note,), HERE),),), ("tab",))
    assert told(chart(part))[0][1][-1] == "Bass: on 1: string 6 open, E 2, whole."


def test_says_how_notes_are_played() -> None:
    note = Note(HERE, Pitch.read("A3"), string=3, fret=2)
    ways = (
        replace(note, joins="hammer-on", accent=True),
        replace(note, bend=2, vibrato=True),
        replace(note, slide_in="up", slide_out="down"),
        replace(note, harmonic=True, ghost=True),
    )
    played = tuple(Event(Fraction(n), Fraction(1), (way,), HERE) for n, way in enumerate(ways))
    said = told(chart(Part("guitar", GUITAR, (played,), ("tab",))))[0][1][-1]
    assert "on 1: string 3 fret 2, A 3, accented, hammered on to the next, quarter" in said
    assert "on 2: string 3 fret 2, A 3, bent up a whole step, vibrato, quarter" in said
    assert "on 3: string 3 fret 2, A 3, slid into upwards, slides off downwards, quarter" in said
    assert "on 4: string 3 fret 2, A 3, ghosted, harmonic, quarter" in said


def test_says_marks_words_and_held_syllables() -> None:
    first, second, third = events("F5:1", "G5:1", "A5:2")
    sung = (
        replace(first, marks=("staccato",), syllables=(Syllable("wa", 1, HERE, joined=True),)),
        replace(second, syllables=(Syllable("ter", 1, HERE), Syllable("way", 2, HERE))),
        replace(third, syllables=(Syllable("", 1, HERE, held=True),)),
    )
    said = told(chart(Part("voice", VOICE, (sung,), ("staff",))))[0][1][-1]
    assert said == (
        "Voice: on 1: F 5, quarter, staccato, sung “wa-”; "
        "on 2: G 5, quarter, sung “ter”, sung in verse 2 “way”; "
        "on 3: A 5, half, syllable held."
    )


def test_says_stretches_of_a_part() -> None:
    marks = (
        StretchMark("palm mute", Fraction(0), Fraction(4), HERE),
        StretchMark("crescendo", Fraction(2), Fraction(6), HERE),
    )
    part = replace(voice("E2:4", "E2:4"), stretches=marks)
    (_, first), (_, second) = told(chart(part, count=2))
    assert first[-1] == (
        "Voice: on 1: E 2, whole; palm mute all through; crescendo from 3 for 2 beats."
    )
    assert second[-1] == "Voice: on 1: E 2, whole; crescendo from 1 for 2 beats."


def drum_part(*hits: tuple[str, str]) -> Part:
    found = [
        Event(Fraction(onset), Fraction(1, 2), (Note(HERE, drum=KIT[label]),), HERE)
        for label, onsets in hits
        for onset in onsets.split()
    ]
    return Part("drums", Instrument("drums"), (tuple(found), ()), ("drums",))


def test_says_who_hits_on_which_count() -> None:
    part = drum_part(("HH", "0 1/2 1 3/2 2 5/2 3 7/2"), ("SD", "1 3"), ("BD", "0 2 5/2"))
    assert told(chart(part))[0][1][-1] == (
        "Drums: hi-hat on every eighth; snare drum on 2, 4; bass drum on 1, 3, the and of 3."
    )


def test_says_how_drums_are_struck() -> None:
    hits = (
        Note(HERE, drum=KIT["HH"], opened=True),
        Note(HERE, drum=KIT["SD"], ghost=True),
        Note(HERE, drum=KIT["SD"], accent=True, flam=True),
    )
    played = tuple(Event(Fraction(n), Fraction(1), (hit,), HERE) for n, hit in enumerate(hits))
    part = Part("drums", Instrument("drums"), (played,), ("drums",))
    assert told(chart(part))[0][1][-1] == (
        "Drums: open hi-hat on 1; accented flammed snare drum on 3; ghosted snare drum on 2."
    )


def test_a_part_without_notes_rests() -> None:
    empty = Part("drums", Instrument("drums"), ((),), ("drums",))
    assert told(chart(voice("r:4"), empty))[0][1][1:] == ("Voice: rest.", "Drums: rest.")


def test_tells_two_voices_of_a_part_apart() -> None:
    part = Part("keys", Instrument("keys"), (events("C5:4"), events("E3:4")), ("staff",))
    assert told(chart(part))[0][1][-1] == (
        "Keys: on 1: C 5, whole; second voice: on 1: E 3, whole."
    )


def test_says_pickup_repeats_endings_sections_and_remarks() -> None:
    pickup = Bar(0, COMMON, Fraction(0), Fraction(1), HERE, skipped=Fraction(3))
    first = Bar(
        1, COMMON, Fraction(1), Fraction(4), HERE, repeat_start=True, ending="1.", repeat_end=True
    )
    second = Bar(2, COMMON, Fraction(5), Fraction(4), HERE, ending="2.", ending_closes=True)
    made = chart(
        voice("G4:1", "C5:4", "D5:4"),
        bars=(pickup, first, second),
        sections=(Remark(Fraction(1), "Verse", HERE),),
        remarks=(Remark(Fraction(7), "slower", HERE),),
    )
    said = told(made)
    assert said[0] == ("Pickup", ("In 4/4.", "Voice: on 4: G 4, quarter."))
    assert said[1][1] == (
        "Section: Verse.",
        "A repeat starts.",
        "Ending 1 starts.",
        "Voice: on 1: C 5, whole.",
        "The repeat ends here.",
    )
    assert said[2][1] == (
        "Ending 2 starts.",
        "Remark on 3: slower.",
        "Voice: on 1: D 5, whole.",
        "The ending closes here.",
    )


def test_summary_says_bars_key_tempo_players_and_chords() -> None:
    names = [chord("Eb", "sus2"), chord("Gb", "sus2"), chord("Eb", "sus2")]
    made = chart(
        voice("r:8"),
        Part("guitar", GUITAR, (), ("tab",)),
        count=2,
        key=Key.read("Eb minor"),
        tempo=Tempo(Fraction(96)),
        chords=tuple(ChordEvent(Fraction(n), Fraction(1), c, HERE) for n, c in enumerate(names)),
    )
    assert summary(ChartReading(made, (), ())) == (
        "Two bars of 4/4 in E flat minor at 96: voice and guitar tuned half-step down, "
        "over E flat suspended 2 and G flat suspended 2."
    )


def test_summary_of_a_progression_names_four_chords_and_counts_the_rest() -> None:
    names = [chord(root, "") for root in "CFGADE"]
    made = chart(
        count=6,
        kind="changes",
        tempo=Tempo(Fraction(58), Fraction(3, 2)),
        chords=tuple(ChordEvent(Fraction(n), Fraction(1), c, HERE) for n, c in enumerate(names)),
    )
    assert summary(ChartReading(made, (), ())) == (
        "Six bars of 4/4 at dotted quarter 58: "
        "C major, F major, G major, A major and 2 more chords."
    )


def test_summary_says_pickup_capo_and_changing_meters() -> None:
    pickup = Bar(0, COMMON, Fraction(0), Fraction(1), HERE)
    seven = Bar(1, Meter.read("7/8"), Fraction(1), Fraction(7, 2), HERE)
    guitar = Instrument(
        "guitar", Fretted(TUNINGS["guitar", "drop Db", 6], STANDARD["guitar", 6], 2)
    )
    made = chart(Part("guitar", guitar, (), ("tab",)), bars=(pickup, seven))
    assert summary(ChartReading(made, (), ())) == (
        "One bar of 4/4 and 7/8 with a pickup: guitar tuned drop D flat with a capo at fret 2."
    )
