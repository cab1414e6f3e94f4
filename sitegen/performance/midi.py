"""A performance as a Standard MIDI File (RP-001, format 1), General MIDI level 1 sounds."""

from collections.abc import Iterator
from fractions import Fraction
from io import BytesIO
from typing import TYPE_CHECKING

from sitegen.performance.performance import Performance, Player, Sound, Stroke

if TYPE_CHECKING:
    from mido import MidiTrack

TICKS = 960
"""Ticks a quarter note: halves to thirty-seconds, triplets and quintuplets come out whole."""
_DRUM_CHANNEL = 9
_LOUDEST = _HIGHEST = 127
_BEND_RANGE = 12
_BEND_TOP = 8191
_BEND_STEPS = 8
PROGRAMS: dict[Sound, int] = {
    "voice": 53,
    "guitar": 27,
    "bass": 33,
    "keys": 0,
    "drums": 0,
    "reed": 65,
    "chords": 4,
}
"""General MIDI level 1 programs, counted from 0."""

Timed = tuple[int, int, str, dict[str, int]]
"""A message: its tick, its rank among those of a tick, its type and its values."""


def write_midi(performance: Performance, title: str = "") -> bytes:
    """Return the bytes of a MIDI file with one track for each player that plays at first.

    Bends and slides are pitch wheel messages over a range of an octave, set by RPN 0; they are
    left out where the player sounds another note at the same time, which they would bend too.
    """
    from mido import MetaMessage, MidiFile, MidiTrack, bpm2tempo  # noqa: PLC0415 - only here

    file = MidiFile(type=1, ticks_per_beat=TICKS, charset="utf-8")
    head = MidiTrack([MetaMessage("track_name", name=title)])
    head.append(MetaMessage("set_tempo", tempo=bpm2tempo(float(performance.quarters_per_minute))))
    file.tracks.append(head)
    channels = (channel for channel in range(16) if channel != _DRUM_CHANNEL)
    for player in performance.players:
        if player.at_first:
            channel = _DRUM_CHANNEL if player.sound == "drums" else next(channels, 15)
            file.tracks.append(_track(player, channel))
    data = BytesIO()
    file.save(file=data)
    return data.getvalue()


def _track(player: Player, channel: int) -> "MidiTrack":
    from mido import Message, MetaMessage, MidiTrack  # noqa: PLC0415 - only here

    # Checked here once, and not with every message: the other values are of our own making.
    notes = {stroke.midi for stroke in player.strokes}
    if notes and not 0 <= min(notes) <= max(notes) <= _HIGHEST:
        raise ValueError(f"{player.name} plays notes that MIDI has no numbers for")
    track = MidiTrack([MetaMessage("track_name", name=player.name)])
    now = 0
    for tick, _, kind, values in sorted(_messages(player), key=lambda timed: timed[:2]):
        track.append(Message(kind, skip_checks=True, channel=channel, time=tick - now, **values))
        now = tick
    return track


def _messages(player: Player) -> Iterator[Timed]:
    yield 0, 0, "program_change", {"program": PROGRAMS[player.sound]}
    if any(stroke.glide is not None for stroke in player.strokes):
        for control, value in ((101, 0), (100, 0), (6, _BEND_RANGE), (38, 0)):
            yield 0, 0, "control_change", {"control": control, "value": value}
    for stroke in player.strokes:
        start = _tick(stroke.start)
        end = max(_tick(stroke.start + stroke.length), start + 1)
        velocity = max(1, round(_LOUDEST * stroke.loudness))
        yield start, 3, "note_on", {"note": stroke.midi, "velocity": velocity}
        yield end, 1, "note_off", {"note": stroke.midi, "velocity": 0}
        if stroke.glide is not None and _is_alone(stroke, player):
            yield from _glide(stroke, start, end)


def _is_alone(stroke: Stroke, player: Player) -> bool:
    end = stroke.start + stroke.length
    return not any(
        other is not stroke and other.start < end and stroke.start < other.start + other.length
        for other in player.strokes
    )


def _glide(stroke: Stroke, start: int, end: int) -> Iterator[Timed]:
    """Yield a rise or fall over the first half of the note, and the wheel's way back after it."""
    distance = (stroke.glide or 0) - stroke.midi
    top = max(-_BEND_TOP, min(_BEND_TOP, round(_BEND_TOP * distance / _BEND_RANGE)))
    for step in range(1, _BEND_STEPS + 1):
        tick = start + (end - start) * step // (2 * _BEND_STEPS)
        yield tick, 2, "pitchwheel", {"pitch": top * step // _BEND_STEPS}
    yield end, 2, "pitchwheel", {"pitch": 0}


def _tick(time: Fraction) -> int:
    whole, rest = divmod(time.numerator * TICKS, time.denominator)
    return round(time * TICKS) if rest else whole
