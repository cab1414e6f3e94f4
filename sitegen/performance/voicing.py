"""Chord symbols made audible: a bass note, and the members close by around middle C.

A plain comping voicing of our own: each member is put into the octave where it lies nearest to the
middle of the chord before, so that chords that share a note keep it in place.
"""

from collections.abc import Sequence

from sitegen.score.chord import Chord

_LOWEST_BASS = 36
_CENTRE = 60


def voice_chord(chord: Chord, before: Sequence[int] = ()) -> tuple[int, ...]:
    """Return MIDI numbers from low to high; `before` are those of the chord before.

    The first is the bass, from C2 up; the others are different members of the chord within an
    octave and a half around middle C.
    """
    upper = before[1:]
    centre = round(sum(upper) / len(upper)) if upper else _CENTRE
    centre = (centre + _CENTRE) // 2
    bass = _LOWEST_BASS + (chord.bass.pitch_class - _LOWEST_BASS) % 12
    members = {name.pitch_class for name in chord.members}
    voiced = {_nearest(member, centre) for member in members}
    return (bass, *sorted(voiced))


def _nearest(pitch_class: int, centre: int) -> int:
    return centre - 6 + (pitch_class - centre + 6) % 12
