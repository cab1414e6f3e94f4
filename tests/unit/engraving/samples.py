"""Hand-made charts for the tests of this room: one of each kind, newly written."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from unit.engraving.building import (
    BASS,
    GUITAR,
    LOW_GUITAR,
    OUTSIDE,
    SPAN,
    TENSION,
    TONE,
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

from sitegen.analysis.reading import ChartReading
from sitegen.score.chart import Bar, Chart, Note, Part, Remark, StretchMark
from sitegen.score.instrument import STANDARD, Fretted, Instrument
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo


def riff() -> ChartReading:
    """Return a detuned guitar under a voice, with words, degrees and numerals; two bars."""
    voice = sung(
        melody("F5:1 Ab5:1 Gb5:1/2 F5:1/2 r:1 F5:2 Db5:1 Eb5:1"), "Slow wa- ter ris- ing for me"
    )
    low = "4.2,5.2,6.0:1/2 " * 8
    high = "4.6,5.5,6.3:1/2 " * 8
    chart = Chart(
        "riff",
        "notation",
        SPAN,
        bars("4/4", 2),
        title="Opening figure",
        key=Key.read("Eb minor"),
        tempo=Tempo(Fraction(96)),
        parts=(
            voice_part(voice),
            fretted_part(
                tab(LOW_GUITAR, low + high),
                LOW_GUITAR,
                stretches=(StretchMark("palm mute", Fraction(0), Fraction(4), SPAN),),
            ),
        ),
        chords=changes("4 Eb sus2", "4 Gb maj7♯11"),
        sections=(Remark(Fraction(0), "Verse", SPAN),),
        roman=True,
    )
    degrees = [
        ("2", TONE),
        ("11", TENSION),
        ("♭3", OUTSIDE),
        ("2", TONE),
        ("maj7", TONE),
        ("5", TONE),
        ("13", TENSION),
    ]
    return reading(chart, degrees, ("i", "♭III7"))


def techniques() -> ChartReading:
    """Return a guitar with everything a player's hand does; 4/4 with a pickup."""
    events = tab(
        GUITAR,
        "3.5:1/2 3.7:1/2 "
        "3.5:1/2 3.7:1/2 3.5:1/2 4.7:1/2 2.8:1 1.5:1 "
        "6.x:1/2 6.x:1/2 5.12,4.12:1/2 3.7:1/2 2.5:1 2.8:1 "
        "4.12:1 3.9:3/2 1.3:1/2 2.3:1",
        n0={"joins": "hammer-on"},
        n2={"joins": "hammer-on"},
        n3={"joins": "pull-off"},
        n5={"joins": "slide"},
        n6={"bend": 2, "joins": ""},
        n7={"vibrato": True},
        n11={"ghost": True},
        n12={"bend": 3, "joins": "bend"},
        n14={"harmonic": True},
        n15={"slide_in": "up", "vibrato": True},
        n16={"slide_out": "down"},
    )
    chart = Chart(
        "hands",
        "notation",
        SPAN,
        bars("4/4", 3, Fraction(1)),
        title="Hands",
        key=Key.read("A minor"),
        tempo=Tempo(Fraction(84)),
        parts=(
            fretted_part(
                events,
                stretches=(
                    StretchMark("palm mute", Fraction(5), Fraction(7), SPAN),
                    StretchMark("let ring", Fraction(9), Fraction(13), SPAN),
                    StretchMark("crescendo", Fraction(1), Fraction(5), SPAN),
                ),
            ),
        ),
        chords=changes("1 E m7", "4 A m7", "4 D 7♯9", "4 G 6 B"),
        remarks=(Remark(Fraction(1), "with a pick", SPAN),),
    )
    return reading(chart)


def kit() -> ChartReading:
    """Return drums alone: two voices, open hi-hat, ghost, flam, roll, accents; two bars of 4/4."""
    hands = struck(
        "CC!:1/2 HH:1/2 SD!,HH:1/2 HHo:1/2 HH:1/4 SD(:1/4 HH:1/2 SDf,HH:1/2 HH:1/2 "
        "RC:1 SDz:1 T1:1/4 T1:1/4 T2:1/4 FT:1/4 RB:1"
    )
    feet = struck("BD:3/2 BD:1/2 BD:2 HF:1 r:3")
    part = Part("drums", Instrument("drums"), (hands, feet), ("drums",))
    chart = Chart(
        "kit",
        "notation",
        SPAN,
        bars("4/4", 2),
        title="Kit",
        feel="swing",
        tempo=Tempo(Fraction(120)),
        parts=(part,),
    )
    return reading(chart)


def band() -> ChartReading:
    """Return voice, bass and drums in 7/8 with a repeat, two endings and a meter change."""
    voice = melody("E5:1/2 F#5:1/2 G5:1 B4:3/2 A4:7/2 G4:2 A4:2")
    bass = tab(BASS, "4.0:1 4.0:1/2 3.2:1/2 4.3:3/2 4.3:7/2 4.0:4")
    hands = struck("HH:1/2 HH:1/2 SD,HH:1/2 HH:1/2 HH:1/2 SD,HH:1/2 HH:1/2 " * 2 + "CC:4")
    feet = struck("BD:2 BD:3/2 BD:2 BD:3/2 BD:4")
    seven, four = Meter.read("7/8"), Meter.read("4/4")
    made = (
        Bar(1, seven, Fraction(0), Fraction(7, 2), SPAN, repeat_start=True),
        Bar(
            2,
            seven,
            Fraction(7, 2),
            Fraction(7, 2),
            SPAN,
            ending="1.",
            ending_closes=True,
            repeat_end=True,
        ),
        Bar(
            3,
            four,
            Fraction(7),
            Fraction(4),
            SPAN,
            new_meter=True,
            ending="2.",
            ending_closes=True,
            double_bar=True,
        ),
    )
    chart = Chart(
        "band",
        "notation",
        SPAN,
        made,
        title="Band",
        key=Key.read("E minor"),
        parts=(
            voice_part(voice),
            fretted_part(bass, BASS, "bass"),
            Part("drums", Instrument("drums"), (hands, feet), ("drums",)),
        ),
        chords=changes("7/2 E m", "7/2 G -", "4 A m7♭5 C"),
    )
    return reading(chart, roman=())


def song() -> ChartReading:
    """Return a tune over four lines: two verses, chords, numerals, a pickup, a swung feel."""
    tune = melody(
        "G4:1/2 A4:1/2 "
        "B4:3/2 D5:1/2 E5:1 D5:1 B4:2 A4:1/2 G4:3/2 E4:1 G4:1 A4:2/3 B4:2/3 A4:2/3 G4:3 D4:1 "
        "C5:3/2 B4:1/2 A4:1/3 G4:1/3 A4:1/3 C5:1 B4:3 B4,D5:1 E5:7/2 D5:1/2 D5:4 "
    )
    tune = sung(
        tune,
        "Oh the light goes down on the wa- ter _ slow and low _ and _ "
        "I will wait for the tide _ to come in",
        1,
    )
    tune = sung(
        tune,
        "And the wind comes up from the har- bour _ cold and clear _ but _ "
        "I will stay till the moon _ goes down",
        2,
    )
    made = tuple(
        replace(bar, opens_line=bar.number in (0, 3, 5, 7)) for bar in bars("4/4", 8, Fraction(1))
    )
    length = made[-1].end
    last = tune[-1]
    tune = (*tune[:-1], replace(last, duration=length - last.onset)) if last.end < length else tune
    chart = Chart(
        "song",
        "notation",
        SPAN,
        made,
        title="Song",
        key=Key.read("G"),
        feel="swing",
        tempo=Tempo(Fraction(88)),
        parts=(voice_part(tune),),
        roman=True,
        chords=changes(
            "1 D 7",
            "4 G 6/9",
            "4 E m7",
            "4 C maj7",
            "4 D 13sus4",
            "2 A m7",
            "2 Ab 7♯11",
            "4 G -",
            "4 C m6",
            "4 G - D",
        ),
        sections=(Remark(Fraction(1), "A", SPAN), Remark(Fraction(17), "B", SPAN)),
        remarks=(Remark(Fraction(17), "a little slower", SPAN),),
    )
    degrees = [
        ("5", TONE),
        ("9", TENSION),
        ("3", TONE),
        ("♭7", TONE),
        ("♯11", TENSION),
        ("4", OUTSIDE),
    ] * 6
    return reading(
        chart, degrees, ("V7", "I6", "vi7", "IV7", "V7", "ii7", "♭II7", "I", "iv6", "I64")
    )


def chords_alone() -> ChartReading:
    """Return chords without any part."""
    chart = Chart(
        "slashes",
        "notation",
        SPAN,
        bars("6/8", 4),
        key=Key.read("F"),
        chords=changes("3 F -", "3 D m7", "3/2 G m7", "3/2 C 7", "3 F -"),
    )
    return reading(chart)


def tablature_alone() -> ChartReading:
    """Return a tablature that shows its own rhythm, on seven strings in 6/8."""
    seven = Fretted(STANDARD["guitar", 7], STANDARD["guitar", 7])
    events = tab(seven, "7.0:1/2 7.0:1/2 6.3:1/2 5.2:1 4.2:1/2 r:3/2 7.x:1/2 7.0:1")
    chart = Chart(
        "tab",
        "notation",
        SPAN,
        bars("6/8", 2),
        parts=(fretted_part(events, seven, shows=("tab",)),),
        chords=changes("3 B 5", "3 E m"),
    )
    return reading(chart, [("R", TONE)], ("i", "iv"))


def low_keys() -> ChartReading:
    """Return a left hand at the keys, in 5/4, with marks; no key."""
    events = melody("C2,G2:3/2 E2:1/2 F2:1 G2:1 A2:1 C3:3 r:2")
    marked = (
        replace(events[0], marks=("accent",)),
        replace(events[1], marks=("staccato",)),
        replace(events[2], marks=("tenuto", "staccato")),
        *events[3:5],
        replace(events[5], marks=("fermata",)),
        events[6],
    )
    part = voice_part(
        marked,
        "keys",
        stretches=(StretchMark("diminuendo", Fraction(2), Fraction(5), SPAN),),
    )
    return reading(Chart("keys", "notation", SPAN, bars("5/4", 2), parts=(part,)))


def without_marks(made: ChartReading) -> ChartReading:
    """Return the same notes played plainly: no joins, signs or stretches."""

    def plain(note: Note) -> Note:
        return Note(note.span, note.pitch, note.fingered, note.string, note.fret, note.drum)

    parts = tuple(
        replace(
            part,
            stretches=(),
            voices=tuple(
                tuple(replace(e, notes=tuple(plain(n) for n in e.notes)) for e in voice)
                for voice in part.voices
            ),
        )
        for part in made.chart.parts
    )
    return replace(made, chart=replace(made.chart, parts=parts))


Make = Callable[[], ChartReading]


ALL: list[Make] = [
    riff,
    techniques,
    kit,
    band,
    song,
    chords_alone,
    tablature_alone,
    low_keys,
]
"""Every sample, by what makes it."""
