"""MIDI files read back by libraries from outside: music21 and mido."""

from fractions import Fraction
from io import BytesIO

import mido
import pytest
from music21 import converter, note, stream
from unit.charts.reading_aloud import chart_of, read

from sitegen.performance import Performance, Player, Stroke, perform, write_midi

TUNE = """
    tempo: 90
    meter: 3/4
    count | 3   &   | 1   2   la  li  3   | 1   2   3   |
    chord |         | G                   | Am          |
    voice | D4  G4  | B4  A4  G4  F#4 E4  | C5          |
    bass  |         | G2                  | A2      r   |
    drums
      SD  |         |                 o   |     X       |
      BD  |         | o                   | o           |
"""


def read_back(performance: Performance) -> stream.Score:
    score = converter.parseData(write_midi(performance), format="midi")
    assert isinstance(score, stream.Score)
    return score


def sounding(part: stream.Part) -> list[note.Note]:
    return [found for found in part.flatten().notes if isinstance(found, note.Note)]


def test_another_program_reads_the_same_notes() -> None:
    score = read_back(perform(chart_of(read(TUNE))))
    voice, bass = (sounding(part) for part in list(score.parts)[:2])
    assert [n.pitch.midi for n in voice] == [62, 67, 71, 69, 67, 66, 64, 72]
    assert [float(n.offset) for n in voice][:4] == [0, 0.5, 1, 2]
    assert [(n.pitch.midi, n.quarterLength) for n in bass] == [(43, 3), (45, 2)]


def test_tempo_names_and_drum_channel_stand_in_the_file() -> None:
    file = mido.MidiFile(file=BytesIO(write_midi(perform(chart_of(read(TUNE))), "A tune")))
    (tempo,) = [m for m in file.tracks[0] if m.type == "set_tempo"]
    assert tempo.tempo == 666_667  # microseconds a quarter, 60,000,000 / 90
    assert [track.name for track in file.tracks] == ["A tune", "voice", "bass", "drums", "chords"]
    drums = {m.channel for m in file.tracks[3] if m.type == "note_on"}
    assert drums == {9}  # channel 10 counted from 1: General MIDI level 1
    assert round(file.length, 3) == round(7 * 60 / 90, 3)


def test_a_bend_moves_the_wheel_by_its_share_of_an_octave_and_back() -> None:
    bent = Player("guitar", "guitar", (Stroke(Fraction(0), Fraction(1), 60, 0.7, glide=62),))
    performance = Performance((bent,), (), Fraction(60), tempo_is_given=True)
    track = mido.MidiFile(file=BytesIO(write_midi(performance))).tracks[1]
    wheel = [message.pitch for message in track if message.type == "pitchwheel"]
    # Two semitones of twelve, the wheel's top being 8191.
    assert wheel[-2] == max(wheel) == 1365
    assert wheel[-1] == 0


def test_what_sounds_beside_another_note_is_not_bent() -> None:
    notes = (
        Stroke(Fraction(0), Fraction(1), 60, 0.7, glide=62),
        Stroke(Fraction(0), Fraction(1), 64, 0.7),
    )
    performance = Performance(
        (Player("guitar", "guitar", notes),), (), Fraction(60), tempo_is_given=True
    )
    track = mido.MidiFile(file=BytesIO(write_midi(performance))).tracks[1]
    assert not [m for m in track if m.type == "pitchwheel"]


def test_the_same_performance_gives_the_same_bytes() -> None:
    performance = perform(chart_of(read(TUNE)))
    assert write_midi(performance) == write_midi(performance)


@pytest.mark.parametrize("number", [-1, 128])
def test_notes_that_midi_has_no_numbers_for_are_refused(number: int) -> None:
    # MIDI 1.0: data bytes hold 0 to 127.
    stroke = Stroke(Fraction(0), Fraction(1), number, 0.5)
    player = Player("high", "keys", (stroke,), at_first=True)
    with pytest.raises(ValueError, match="high plays notes"):
        write_midi(Performance((player,), (), Fraction(90), tempo_is_given=True))
