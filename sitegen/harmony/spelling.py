"""Names for notes that come as MIDI numbers, each by its key, its chord and where it goes."""

from collections.abc import Sequence
from functools import lru_cache

from sitegen.harmony.arguments import AnyChord, AnyKey, as_chord, as_key
from sitegen.harmony.chord_degree import ChordDegree
from sitegen.harmony.note_names import is_said, literal_degree
from sitegen.score.chord import Chord, NoChord
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

# How many places below the tonic the twelve usual names begin on the line of fifths: a major key
# has ♭3 ♭6 ♭7 and ♯1 ♯4, a minor one the lowered 2 in place of the raised 1.
_BELOW_TONIC = {False: 4, True: 5}
# Without any context E♭ B♭ F C G D A E B F♯ C♯ G♯, the names that tuners and lists of notes use.
_NO_CONTEXT = -3
_LETTERS = 7
# The ♯4 lies six fifths above the tonic.
_SHARP_FOUR = 6
_BLUE = {ChordDegree(3, -1), ChordDegree(7, -1)}

_Home = tuple[Key | None, Chord | NoChord]


def spell_note(
    midi: int, key: AnyKey | None = None, chord: AnyChord | None = None, goal: int | None = None
) -> Pitch:
    """Return the pitch of a MIDI number, spelled for the chord and key it sounds in.

    A note of the chord, or its bass, has the chord's name; else a note of the key has the key's;
    else, of the names that make a degree one says over the chord (no ♯5 beside a 5, no ♭R), the
    one nearest to the key is taken: ♭3 ♭6 ♭7 ♯4 ♯1 in major, ♭2 in place of ♯1 in minor. Without
    a key the chord's root stands for the tonic; without both, C♯ E♭ F♯ G♯ B♭.

    `goal` is the MIDI number of the note that the line goes to. A note foreign to chord and key
    that rises to it by a semitone is sharp (G G♯ A), one that falls by a semitone is flat, except
    the ♯4 of the key, which is sharp both ways. What is a 9, 11 or 13, a 3 or 7, or a blue ♭3 or
    ♭7 over the chord stays so wherever it goes: E♭ over C7, which is D♯ over C7♯9 only. Falling,
    the tritone of a chord is its ♭5. Common practice, no source.

    Raises ValueError for text that is no key or no chord.
    """
    sounding = as_chord(chord) if chord is not None else NoChord()
    home = as_key(key) if key is not None else None
    motion = goal - midi if goal is not None else 0
    return Pitch.of(_spell_class(midi % 12, home, sounding, motion * (abs(motion) == 1)), midi)


def line_goals(moments: Sequence[Sequence[int]]) -> list[int | None]:
    """Return for each moment of a line the next other note, where both sound alone.

    `moments` hold the MIDI numbers that are struck together, none for a rest, which does not end
    the line; where more than one sounds there is no line.
    """
    goals: list[int | None] = [None] * len(moments)
    following: tuple[int, int | None] | None = None
    for index in range(len(moments) - 1, -1, -1):
        if len(moments[index]) > 1:
            following = None
        elif moments[index]:
            here = moments[index][0]
            if following is not None:
                goals[index] = following[1] if following[0] == here else following[0]
            following = (here, goals[index])
    return goals


@lru_cache(maxsize=8192)
def _spell_class(
    pitch_class: int, key: Key | None, chord: Chord | NoChord, motion: int
) -> PitchName:
    members = (*chord.members, chord.bass) if isinstance(chord, Chord) else ()
    for name in (*members, *(key.scale if key else ())):
        if name.pitch_class == pitch_class:
            return name
    names = _names(pitch_class, (key, chord))
    usual = next((name for name in names if _is_said(name, chord)), names[0])
    if motion == 0 or _keeps_its_name(usual, (key, chord), motion):
        return usual
    goal = _spell_class((pitch_class + motion) % 12, key, chord, 0)
    return next((name for name in names if _leads(name, goal, motion, chord)), usual)


def _names(pitch_class: int, home: _Home) -> tuple[PitchName, ...]:
    """Return the names of a note, the one nearest to the key first."""
    lowest = _lowest_place(*home)
    usual = lowest + (7 * pitch_class - lowest) % 12
    return tuple(PitchName.at_fifths(place) for place in (usual, usual - 12, usual + 12))


def _lowest_place(key: Key | None, chord: Chord | NoChord) -> int:
    """Return where the twelve usual names begin on the line of fifths."""
    if key is not None:
        return key.tonic.fifths - _BELOW_TONIC[key.is_minor]
    if isinstance(chord, Chord):
        return chord.root.fifths - _BELOW_TONIC["♭3" in chord.degrees]
    return _NO_CONTEXT


def _is_said(name: PitchName, chord: Chord | NoChord) -> bool:
    return not isinstance(chord, Chord) or is_said(name, chord)


def _keeps_its_name(name: PitchName, home: _Home, motion: int) -> bool:
    """Tell whether a foreign note has its usual name though it moves by a semitone."""
    key, chord = home
    if isinstance(chord, Chord):
        found = literal_degree(name, chord.root)
        if found.alteration == 0 or found in _BLUE:
            return True
        if found == ChordDegree(11, 1):
            return False
    is_sharp_four = key is not None and name.fifths - key.tonic.fifths == _SHARP_FOUR
    return motion < 0 and is_sharp_four


def _leads(name: PitchName, goal: PitchName, motion: int, chord: Chord | NoChord) -> bool:
    """Tell whether a name leads to its goal by letter: the one before it up, after it down."""
    is_next = (goal.step - name.step) % _LETTERS == motion % _LETTERS
    return is_next and abs(name.alteration) <= 1 and (motion > 0 or _is_said(name, chord))
