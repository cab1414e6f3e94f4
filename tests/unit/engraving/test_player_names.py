"""Charts by the names of their players: which staves and names change, and which stay."""

from xml.etree import ElementTree as ET

import pytest
from unit.charts.reading_aloud import chart_of, read
from unit.engraving.writing import parsed

from sitegen.analysis.study import study_chart
from sitegen.engraving import PlayerNames, player_names, write_mei
from sitegen.score.chart import Chart
from sitegen.source import Source

MEI = "{http://www.music-encoding.org/ns/mei}"


def chart(head: str, *rows: str) -> Chart:
    """Return a bar of 4/4: one note or chord a row, or whole lines of tablature."""
    lines = ["count   | 1   2   3   4   |", *map(_row, rows)]
    return chart_of(read(f"{head}\n\n" + "\n".join(lines)))


def _row(row: str) -> str:
    name, mark, cell = row.partition(": ")
    return f"{name:<7} | {cell:<15} |" if mark else row


def staves(chart: Chart, names: PlayerNames | None) -> dict[int, tuple[str, list[str]]]:
    """Return the signature and the notes of each notation staff, by its number."""
    root = parsed(write_mei(study_chart(chart, Source("a", "")), names=names))
    keys = {
        int(staff.get("n", "0")): signature.get("sig", "")
        for staff in root.iter(f"{MEI}staffDef")
        for signature in staff.iter(f"{MEI}keySig")
    }
    notes: dict[int, list[str]] = {number: [] for number in keys}
    for staff in root.iter(f"{MEI}staff"):
        number = int(staff.get("n", "0"))
        if number in keys:
            notes[number] += [_name(note) for note in staff.iter(f"{MEI}note")]
    return {number: (keys[number], notes[number]) for number in keys}


def _name(note: ET.Element) -> str:
    return f"{note.get('pname')}{note.get('accid', '')}{note.get('oct')}"


def harms(chart: Chart, names: PlayerNames | None) -> list[str]:
    root = parsed(write_mei(study_chart(chart, Source("a", "")), names=names))
    return ["".join(harm.itertext()) for harm in root.iter(f"{MEI}harm")]


CAPO = chart(
    "key: Eb\nroman: on\nguitar: capo 3",
    "chord: Eb",
    "voice: G4",
    "guitar",
    "  e     | ----------------|",
    "  B     | 1---0-----------|",
    "  G     | ----------------|",
    "  D     | ----------------|",
    "  A     | ----------------|",
    "  E     | ----------------|",
)


def test_a_capoed_guitar_is_in_the_key_of_its_shapes_and_the_voice_stays() -> None:
    names = player_names(CAPO)
    assert names is not None
    assert staves(CAPO, None)[1] == ("3f", ["g4"])
    assert staves(CAPO, None)[2] == ("3f", ["e4", "d4"])
    assert staves(CAPO, names)[1] == ("3f", ["g4"])
    assert staves(CAPO, names)[2] == ("0", ["c4", "b3"])


def test_chord_names_follow_the_capo_while_degrees_and_numerals_stay() -> None:
    sounding, fingered = harms(CAPO, None), harms(CAPO, player_names(CAPO))
    assert sounding[0] == "E♭"
    assert fingered[0] == "C"
    assert sounding[1:] == fingered[1:]
    assert {"3", "R", "I"} <= set(fingered)


def test_every_note_keeps_its_id() -> None:
    def ids(names: PlayerNames | None) -> list[str]:
        root = parsed(write_mei(study_chart(CAPO, Source("a", "")), names=names))
        name = "{http://www.w3.org/XML/1998/namespace}id"
        return [node.get(name, "") for node in root.iter() if node.get(name)]

    assert ids(None) == ids(player_names(CAPO)) != []


def test_a_trumpet_alone_with_a_voice_takes_the_chord_names_along() -> None:
    # The B♭ trumpet reads a major second above what sounds: any orchestration handbook.
    played = chart("key: Bb\ntrumpet: reads in Bb", "chord: Bb", "trumpet: Bb4")
    names = player_names(played)
    assert names is not None
    assert staves(played, names)[1] == ("0", ["c5"])
    assert harms(played, names)[0] == "C"
    assert not names.fingered


def test_beside_a_piano_at_pitch_a_trumpet_leaves_the_chord_names() -> None:
    played = chart("key: Bb\ntrumpet: reads in Bb", "chord: Bb", "trumpet: Bb4", "keys: D4")
    names = player_names(played)
    assert names is not None
    assert staves(played, names)[1] == ("0", ["c5"])
    assert staves(played, names)[2] == ("2f", ["d4"])
    assert harms(played, names)[0] == "B♭"


def test_a_bass_that_reads_in_a_key_of_its_own_loses_its_octave_clef() -> None:
    played = chart("bass: reads an octave up", "bass: E2")
    root = parsed(write_mei(study_chart(played, Source("a", "")), names=player_names(played)))
    assert [clef.get("dis") for clef in root.iter(f"{MEI}clef")] == [None]
    assert staves(played, player_names(played))[1][1] == ["e3"]


def test_a_dead_note_stands_on_the_open_string_as_it_is_called() -> None:
    empty = [f"  {string}     | ----------------|" for string in "eBGDA"]
    head = "key: Eb minor\nguitar: half-step down"
    played = chart(head, "guitar", *empty, "  E     | x---2-----------|")
    assert staves(played, None)[1][1] == ["e2", "f2"]
    assert staves(played, player_names(played))[1] == ("1s", ["e2", "f2"])


@pytest.mark.parametrize(
    "head",
    [
        "key: Eb\nguitar: standard",
        "key: Eb\nguitar: drop D",
        "key: Eb\nguitar: capo 12",
        "key: Eb",
    ],
)
def test_what_is_called_as_it_sounds_has_no_second_way(head: str) -> None:
    assert player_names(chart(head, "chord: Eb", "guitar: Eb4")) is None


def test_intervals_are_told_from_what_sounds() -> None:
    played = chart(
        "key: Eb\nlabel: intervals\nguitar: capo 3",
        "chord: Eb",
        "voice: G4",
        "guitar: Bb3",
    )
    assert harms(played, player_names(played))[1:] == ["M3", "P5"]
