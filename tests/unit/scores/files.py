"""Small scores, written here, for tests."""

import io
import zipfile
from typing import Any

from music21 import meter, midi, stream

HEAD = (
    '<?xml version="1.0" encoding="{encoding}"?>\n<score-partwise version="4.0"><part-list>'
    '<score-part id="P1"><part-name>{name}</part-name></score-part></part-list><part id="P1">'
)
OPENING = (
    "<attributes><divisions>2</divisions><key><fifths>{fifths}</fifths></key>"
    "<time><beats>{beats}</beats><beat-type>4</beat-type></time>{more}</attributes>"
)


def xml_score(*measures: str, name: str = "Piano", encoding: str = "UTF-8") -> bytes:
    """Return a score of one part; the measures are numbered from 1 unless they say otherwise."""
    bars = (
        inside
        if inside.startswith("<measure")
        else f'<measure number="{number}">{inside}</measure>'
        for number, inside in enumerate(measures, start=1)
    )
    text = HEAD.format(name=name, encoding=encoding) + "".join(bars) + "</part></score-partwise>"
    return text.encode(encoding)


def opening(*, fifths: int = 0, beats: int = 2, more: str = "") -> str:
    """Return the attributes of a first bar, whose beats are quarters."""
    return OPENING.format(fifths=fifths, beats=beats, more=more)


def xml_note(pitch: str, length: int, more: str = "", *, voice: int = 1, staff: str = "") -> str:
    """Return a note, "C4", of so many eighths; `more` is what follows its voice."""
    place = f"<pitch><step>{pitch[0]}</step><octave>{pitch[1:]}</octave></pitch>"
    staff_ = f"<staff>{staff}</staff>" if staff else ""
    parts = f"{place}<duration>{length}</duration><voice>{voice}</voice>{staff_}{more}"
    return f"<note>{parts}</note>"


def packed(files: dict[str, bytes], how: int = zipfile.ZIP_DEFLATED) -> bytes:
    """Return an archive of some files."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", how) as archive:
        for name, data in files.items():
            archive.writestr(name, data)
    return made.getvalue()


def m21_part(*elements: Any) -> Any:  # noqa: ANN401 - music21 has no types
    """Return a part of music21's in 2/4 with these elements, not in bars yet."""
    made: Any = stream.Part
    return made([meter.TimeSignature("2/4"), *elements])


def midi_file(*elements: Any) -> bytes:  # noqa: ANN401 - as above
    """Return a MIDI file of one part in 2/4."""
    made: Any = midi.translate.streamToMidiFile(stream.Score([m21_part(*elements)]))
    data: bytes = made.writestr()
    return data
