"""The drum kit: row labels, what each sounds and where it stands on the staff.

Sounds are General MIDI Level 1 percussion key numbers (35 to 81; MMA, General MIDI System
Level 1, 1991). Staff places follow the common five-line layout: common practice, no source.
"""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True)
class DrumSound:
    """One voice of the kit.

    `place` is the staff place as (letter, octave) of a note in treble clef; `hands` tells
    whether it belongs to the upper voice; `head` is the note head.
    """

    label: str
    name: str
    midi: int
    open_midi: int
    place: tuple[str, int]
    hands: bool
    head: Literal["plain", "x", "diamond"]


def _sound(
    label: str,
    name: str,
    midi: int,
    place: str,
    head: Literal["plain", "x", "diamond"] = "plain",
    *,
    hands: bool = True,
    open_midi: int | None = None,
) -> DrumSound:
    return DrumSound(label, name, midi, open_midi or midi, (place[0], int(place[1])), hands, head)


KIT: dict[str, DrumSound] = {
    sound.label: sound
    for sound in (
        _sound("CC", "crash cymbal", 49, "A5", "x"),
        _sound("C2", "second crash cymbal", 57, "B5", "x"),
        _sound("CH", "china cymbal", 52, "C6", "x"),
        _sound("SC", "splash cymbal", 55, "B5", "x"),
        _sound("RC", "ride cymbal", 51, "F5", "x"),
        _sound("RB", "ride bell", 53, "F5", "diamond"),
        _sound("HH", "hi-hat", 42, "G5", "x", open_midi=46),
        _sound("T1", "high tom", 48, "E5"),
        _sound("T2", "middle tom", 47, "D5"),
        _sound("SD", "snare drum", 38, "C5"),
        _sound("SS", "side stick", 37, "C5", "x"),
        _sound("HC", "hand clap", 39, "C5", "x"),
        _sound("TA", "tambourine", 54, "B4", "x"),
        _sound("CB", "cowbell", 56, "E5", "x"),
        _sound("MA", "maracas", 70, "B4", "x"),
        _sound("FT", "floor tom", 43, "A4"),
        _sound("BD", "bass drum", 36, "F4", hands=False),
        _sound("HF", "hi-hat by foot", 44, "D4", "x", hands=False),
    )
}
"""The kit by row label."""
