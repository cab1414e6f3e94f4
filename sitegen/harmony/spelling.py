"""Names for notes that come as MIDI numbers."""

from functools import lru_cache

from sitegen.harmony.arguments import AnyChord, AnyKey, as_chord, as_key
from sitegen.harmony.note_names import is_said
from sitegen.score.chord import Chord, NoChord
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

# How many places below the tonic the twelve usual names begin on the line of fifths: a major key
# has ♭3 ♭6 ♭7 and ♯1 ♯4, a minor one the lowered 2 in place of the raised 1.
_BELOW_TONIC = {False: 4, True: 5}
# Without any context E♭ B♭ F C G D A E B F♯ C♯ G♯, the names that tuners and lists of notes use.
_NO_CONTEXT = -3


def spell_note(midi: int, key: AnyKey | None = None, chord: AnyChord | None = None) -> Pitch:
    """Return the pitch of a MIDI number, spelled for the chord and key it sounds in.

    A note of the chord, or its bass, has the chord's name; else a note of the key has the key's;
    else, of the names that make a degree one says over the chord (no ♯5 beside a 5, no ♭R), the
    one nearest to the key is taken: ♭3 ♭6 ♭7 ♯4 ♯1 in major, ♭2 in place of ♯1 in minor. Without
    a key the chord's root stands for the tonic; without both, C♯ E♭ F♯ G♯ B♭. Raises ValueError
    for text that is no key or no chord.
    """
    sounding = as_chord(chord) if chord is not None else NoChord()
    home = as_key(key) if key is not None else None
    return Pitch.of(_spell_class(midi % 12, home, sounding), midi)


@lru_cache(maxsize=8192)
def _spell_class(pitch_class: int, key: Key | None, chord: Chord | NoChord) -> PitchName:
    members = (*chord.members, chord.bass) if isinstance(chord, Chord) else ()
    for name in (*members, *(key.scale if key else ())):
        if name.pitch_class == pitch_class:
            return name
    return _spell_chromatic(pitch_class, _lowest_place(key, chord), chord)


def _lowest_place(key: Key | None, chord: Chord | NoChord) -> int:
    """Return where the twelve usual names begin on the line of fifths."""
    if key is not None:
        return key.tonic.fifths - _BELOW_TONIC[key.is_minor]
    if isinstance(chord, Chord):
        return chord.root.fifths - _BELOW_TONIC["♭3" in chord.degrees]
    return _NO_CONTEXT


def _spell_chromatic(pitch_class: int, lowest: int, chord: Chord | NoChord) -> PitchName:
    usual = lowest + (7 * pitch_class - lowest) % 12
    names = [PitchName.at_fifths(place) for place in (usual, usual - 12, usual + 12)]
    if not isinstance(chord, Chord):
        return names[0]
    return next((name for name in names if is_said(name, chord)), names[0])
