"""Forty figures of handbooks with their chords in C: diatonic, borrowed, applied, inverted.

The chords on the steps of major and minor, mixture, the Neapolitan and applied chords are those
of Kostka and Payne, Tonal Harmony, and Aldwell and Schachter, Harmony and Voice Leading, named
against the major scale as by de Clercq and Temperley (2011); suspended and power chords as
songbooks write them. All from memory.
"""

TONICS = ("C", "G", "D", "A", "E", "B", "F#", "Db", "Ab", "Eb", "Bb", "F")

_MAJOR = (
    ("I", "C"),
    ("ii", "Dm"),
    ("iii", "Em"),
    ("IV", "F"),
    ("V", "G"),
    ("vi", "Am"),
    ("vii°", "Bdim"),
    ("Imaj7", "Cmaj7"),
    ("ii7", "Dm7"),
    ("IVmaj7", "Fmaj7"),
    ("V7", "G7"),
    ("viiø7", "Bm7b5"),
    ("I6", "C/E"),
    ("I64", "C/G"),
    ("V65", "G7/B"),
    ("V43", "G7/D"),
    ("V42", "G7/F"),
    ("ii65", "Dm7/F"),
    ("iv", "Fm"),
    ("♭III", "Eb"),
    ("♭VI", "Ab"),
    ("♭VII", "Bb"),
    ("♭II6", "Db/F"),
    ("V7/ii", "A7"),
    ("V7/iii", "B7"),
    ("V7/IV", "C7"),
    ("V7/V", "D7"),
    ("V7/vi", "E7"),
    ("vii°7/V", "F#dim7"),
    ("Vsus4", "Gsus4"),
    ("I5", "C5"),
)
_MINOR = (
    ("i", "Cm"),
    ("ii°", "Ddim"),
    ("♭III", "Eb"),
    ("iv", "Fm"),
    ("v", "Gm"),
    ("V", "G"),
    ("♭VI", "Ab"),
    ("♭VII", "Bb"),
    ("vii°7", "Bdim7"),
)

FIGURES: tuple[tuple[str, str, str], ...] = (
    *((figure, symbol, "major") for figure, symbol in _MAJOR),
    *((figure, symbol, "minor") for figure, symbol in _MINOR),
)
"""Each figure, the chord it stands for on C, and the mode of the key."""
