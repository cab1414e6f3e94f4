"""Notes against chords, chords against the key, and the check of the author's hearing."""

from unit.charts.reading_aloud import chart_of, read

from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.study import study_chart
from sitegen.source import Source

RIFF = """
    key: Eb minor
    guitar: half-step down

    count  | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
    chord  | Ebsus2                          | Gbmaj7                          |
    voice  | F5      Ab5     Gb5 F5  r       | Ab5     Bb5     C5      Db5     |
    guitar
      e    | --------------------------------|---------------------------------|
      B    | --------------------------------|---------------------------------|
      G    | --------------------------------|---------------------------------|
      D    | --------------------------------|---------------------------------|
      A    | 2-------------------------------|---------------------------------|
      E    | 0-------------------------------|-3-------------------------------|
"""


def studied(text: str) -> ChartReading:
    return study_chart(chart_of(read(text)), Source("chart", text))


def test_every_note_has_a_degree_and_a_role_against_its_chord() -> None:
    voice = [n for n in studied(RIFF).notes if n.part == "voice"]
    assert [(str(n.note.pitch), n.degree, n.role) for n in voice] == [
        ("F5", "2", "chord tone"),
        ("A♭5", "11", "tension"),
        ("G♭5", "♭3", "tension"),
        ("F5", "2", "chord tone"),
        ("A♭5", "9", "tension"),
        ("B♭5", "3", "chord tone"),
        ("C5", "♯11", "tension"),
        ("D♭5", "5", "chord tone"),
    ]


def test_places_are_bars_and_counted_beats() -> None:
    voice = [n for n in studied(RIFF).notes if n.part == "voice"]
    assert [(n.bar, str(n.beat)) for n in voice[2:5]] == [(1, "3"), (1, "7/2"), (2, "1")]


def test_sounding_and_fingered_names_are_both_given() -> None:
    guitar = [n.note for n in studied(RIFF).notes if n.part == "guitar"]
    assert [(str(n.pitch), str(n.fingered)) for n in guitar] == [
        ("E♭2", "E2"),
        ("B♭2", "B2"),
        ("G♭2", "G2"),
    ]


def test_chords_have_numerals_and_root_motion() -> None:
    chords = studied(RIFF).chords
    assert [(str(c.chord), c.roman, c.root_motion) for c in chords] == [
        ("E♭sus2", "isus2", ""),
        ("G♭maj7", "♭IIImaj7", "up a minor third"),
    ]


def fact(reading: ChartReading, path: str) -> Fact:
    return next(fact for fact in reading.facts if fact.path == path)


def test_facts_are_exact_and_say_where_they_are_seen() -> None:
    reading = studied(RIFF)
    assert fact(reading, "bars").value == 2
    assert fact(reading, "voice.range").text == "a minor seventh"
    assert (fact(reading, "voice.lowest").text, fact(reading, "voice.highest").text) == (
        "C5",
        "B♭5",
    )
    assert [(p.bar, str(p.beat)) for p in fact(reading, "voice.highest").evidence] == [(2, "2")]
    assert str(fact(reading, "voice.chord-tone-share").value) == "1/2"
    assert fact(reading, "voice.chord-tone-share").text == "50 %"


HEARD = """
    count  | 1   2   3   4   |
    chord  | C               |
    voice  | E4  F4  Bb4 D5  |
    degree | {} |
"""


def findings(row: str) -> list[tuple[str, str]]:
    text = HEARD.format(row.ljust(15))
    return [(d.code, d.message) for d in studied(text).diagnostics]


def test_agreement_is_silent_also_an_octave_away() -> None:
    assert findings("3   4   b7  2") == []
    assert findings("3   11  b7  9") == []


def test_a_difference_shows_both_and_why() -> None:
    assert findings("b3  11  7   9") == [
        ("degree-heard", "you wrote ♭3; E4 over C is 3"),
        ("degree-heard", "you wrote 7; B♭4 over C is ♭7"),
    ]


def test_an_ear_may_overrule() -> None:
    assert findings("b3! 11  b7  9") == [
        ("degree-kept", "you keep ♭3; by the symbols E4 over C is 3")
    ]
