"""A note against the sounding chord: its degree as a musician says it, and its role."""

from functools import lru_cache

from sitegen.harmony.arguments import AnyChord, AnyPitch, as_chord, as_name
from sitegen.harmony.canonical import degrees_of
from sitegen.harmony.chord_degree import ChordDegree, read_degrees
from sitegen.harmony.tensions import available_tensions
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName
from sitegen.score.role import Role

_SAID = read_degrees("R ♭9 9 ♯9 ♭3 3 11 ♯11 ♭5 5 ♯5 ♭13 13 ♭7 7")
# By sound, where the letter gives a name that nobody says (♭11, ♯3).
_BY_SOUND = "R ♭9 9 ♭3 3 11 ♯11 5 ♭13 13 ♭7 7".split()
_FLAT_THIRD, _SHARP_ELEVENTH = 3, 6


def degree(pitch: AnyPitch, chord: AnyChord) -> str:
    """Return how a musician names a note against the chord that sounds, with ♭ ♯; "" over N.C.

    - What sounds as a member of the chord has the member's name, however it is spelled: the 2 of
      a sus2, the 4 of a sus4, the 6 of a 6 chord, ♭♭7 in a dim7, ♯9 in a 7♯9; F♭ over C7 is 3.
    - Every other note is named by its letter's distance from the root, as a tension where it can
      be one: ♭9 9 ♯9, 11 ♯11, ♭13 13 (also over triads, sus and power chords); 3 ♭3, 5 ♭5 ♯5 and
      7 ♭7 keep their numbers. So F♯ over C is ♯11, G♭ is ♭5; E♭ over C7 is ♭3 and D♯ ♯9.
    - A spelling that would give a name nobody says (♭11, ♯3, ♭R) is named by its sound.
    - The foreign bass of a slash chord is no member: D over C/D is 9.

    Raises ValueError for text that is no pitch, ChordSymbolError for text that is no chord.
    """
    sounding = as_chord(chord)
    if not isinstance(sounding, Chord):
        return ""
    return _name(as_name(pitch), sounding)


def role(pitch: AnyPitch, chord: AnyChord) -> Role | None:
    """Return what a note is to the chord that sounds with it; None over N.C.

    A chord tone sounds as a member or as the bass; a tension sounds as one of the colours that
    `tensions.available_tensions` gives to the chord; all else is a non-chord tone. Spelling does
    not matter. Raises as `degree` does.
    """
    sounding = as_chord(chord)
    if not isinstance(sounding, Chord):
        return None
    return _standing(as_name(pitch).pitch_class, sounding)


def is_said(name: PitchName, chord: Chord) -> bool:
    """Tell whether a musician would spell a note so over the chord, were it not for the key.

    No ♯5 beside a perfect fifth, which is ♭13 then; no ♯9 but over a major third.
    """
    found = literal_degree(name, chord.root)
    names = set(chord.degrees)
    if found == ChordDegree(5, 1):
        return "5" not in names
    if found == ChordDegree(9, 1):
        return "3" in names
    return found in _SAID


def literal_degree(name: PitchName, root: PitchName) -> ChordDegree:
    """Return the degree that a name's letter and alteration give over `root`, as a tension."""
    step = (name.step - root.step) % 7
    number = {1: 9, 3: 11, 5: 13}.get(step, step + 1)
    natural = ChordDegree(number).above(root)
    return ChordDegree(number, name.alteration - natural.alteration)


@lru_cache(maxsize=8192)
def _name(name: PitchName, chord: Chord) -> str:
    return _member_name(name, chord) or _tension_name(name, chord)


@lru_cache(maxsize=8192)
def _standing(pitch_class: int, chord: Chord) -> Role:
    if pitch_class in chord.pitch_classes:
        return Role.CHORD_TONE
    above = (pitch_class - chord.root.pitch_class) % 12
    tensions = available_tensions(degrees_of(chord))
    return Role.TENSION if above in {t.semitones for t in tensions} else Role.NON_CHORD_TONE


def _member_name(name: PitchName, chord: Chord) -> str:
    members = dict(zip(chord.members, chord.degrees, strict=True))
    if name in members:
        return members[name]
    alike = [d for member, d in members.items() if member.pitch_class == name.pitch_class]
    return alike[0] if alike else ""


def _tension_name(name: PitchName, chord: Chord) -> str:
    literal = literal_degree(name, chord.root)
    if literal in _SAID:
        return str(literal)
    above = (name.pitch_class - chord.root.pitch_class) % 12
    if above == _FLAT_THIRD and "3" in chord.degrees:
        return "♯9"
    if above == _SHARP_ELEVENTH and "5" not in chord.degrees:
        return "♭5"
    return _BY_SOUND[above]
