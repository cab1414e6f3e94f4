"""The players of a file: their names, their instruments and the sounds that a program gives them.

Sounds are General MIDI level 1: programs, and the percussion key of each drum. The standard
counts both from 1.
"""

from xml.etree.ElementTree import Element

from sitegen.engraving.musicxml.element import child
from sitegen.performance.midi import PROGRAMS
from sitegen.performance.performing import sound_of
from sitegen.score.chart import Part

_DRUM_CHANNEL = 10
_CHANNELS = [channel for channel in range(1, 17) if channel != _DRUM_CHANNEL]


def drum_instruments(part: Part, player: str) -> dict[int, tuple[str, str]]:
    """Return id and name of every sound of a kit that is struck, by its MIDI number."""
    names = {
        note.midi: f"open {note.drum.name}" if note.midi != note.drum.midi else note.drum.name
        for event in part.events
        for note in event.notes
        if note.drum is not None and note.midi is not None
    }
    return {midi: (f"{player}-D{midi}", names[midi]) for midi in sorted(names)}


def write_player(players: Element, part: Part | None, number: int) -> None:
    """Write the `score-part` of a part, or of chord symbols alone; `number` counts from 1."""
    player = player_id(number)
    home = child(players, "score-part", id=player)
    child(home, "part-name", part_name(part))
    if part is not None and part.is_drums:
        _write_kit(home, part, player)
        return
    child(child(home, "score-instrument", id=f"{player}-I1"), "instrument-name", part_name(part))
    midi = child(home, "midi-instrument", id=f"{player}-I1")
    child(midi, "midi-channel", _CHANNELS[(number - 1) % len(_CHANNELS)])
    child(midi, "midi-program", PROGRAMS["chords" if part is None else sound_of(part)] + 1)


def _write_kit(home: Element, part: Part, player: str) -> None:
    sounds = drum_instruments(part, player)
    for instrument, name in sounds.values():
        child(child(home, "score-instrument", id=instrument), "instrument-name", name)
    for midi, (instrument, _) in sounds.items():
        element = child(home, "midi-instrument", id=instrument)
        child(element, "midi-channel", _DRUM_CHANNEL)
        child(element, "midi-program", PROGRAMS["drums"] + 1)
        child(element, "midi-unpitched", midi + 1)


def player_id(number: int) -> str:
    """Return the id of a player in the file."""
    return f"P{number}"


def part_name(part: Part | None) -> str:
    """Return a part's name with a capital; a chart of chords alone has one part for them."""
    return "Chords" if part is None else part.name[:1].upper() + part.name[1:]
