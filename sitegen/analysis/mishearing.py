"""Why a degree that the author heard is not the one that sounds, in a musician's words.

The usual slips come first: a note taken against the chord before or after, a degree counted from
the key's tonic, another spelling of the same sound. Else it says which note would be that degree.
"""

from bisect import bisect_right

from sitegen.analysis.reading import NoteReading
from sitegen.harmony import degree, key_degree
from sitegen.harmony.chord_degree import ChordDegree
from sitegen.score.chart import Chart, ChordEvent, HeardDegree
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName


def explain_mishearing(chart: Chart, heard: HeardDegree, reading: NoteReading) -> str:
    """Return a clause that explains `heard` against the note that sounds; "" where none can."""
    note = reading.note.pitch
    if note is None or "," in heard.text:
        return ""
    named = ChordDegree.read(heard.text)
    if chart.label == "key degrees":
        return (
            _as_spelled(named, note.name, chart.key.tonic, f"in {chart.key}") if chart.key else ""
        )
    chord = chart.chord_at(heard.onset)
    if not isinstance(chord, Chord):
        return ""
    return (
        _against_neighbour(chart, heard, named, note.name)
        or _against_key(chart, named, note.name)
        or _as_spelled(named, note.name, chord.root, f"over {chord}")
    )


def _against_neighbour(
    chart: Chart, heard: HeardDegree, named: ChordDegree, note: PitchName
) -> str:
    place = bisect_right(chart.chords, heard.onset, key=lambda event: event.onset)
    around: tuple[tuple[str, tuple[ChordEvent, ...]], ...] = (
        ("the next chord", chart.chords[place : place + 1]),
        ("the chord before", chart.chords[max(place - 2, 0) : max(place - 1, 0)]),
    )
    for which, events in around:
        for event in events:
            if isinstance(event.chord, Chord) and _is(degree(note, event.chord), named):
                return f"{note} is {named} over {event.chord}, {which}"
    return ""


def _against_key(chart: Chart, named: ChordDegree, note: PitchName) -> str:
    if chart.key is None or not _is(key_degree(note, chart.key), named):
        return ""
    return f"{note} is {named} counted from {chart.key.tonic}, the tonic, and not from the chord"


def _as_spelled(named: ChordDegree, note: PitchName, root: PitchName, where: str) -> str:
    meant = named.above(root)
    if meant.pitch_class == note.pitch_class:
        return f"{named} {where} is written {meant}, which sounds like {note}"
    return f"{named} {where} is {meant}"


def _is(text: str, named: ChordDegree) -> bool:
    return bool(text) and ChordDegree.read(text).same_note == named.same_note
