"""The one table of chord qualities: their degrees, their usual name and all that writers write.

Every reading, naming and printing of chord symbols goes through this table. The sets of degrees
are those on which music21 10.5, mir_eval 0.8.2, pychord 1.4.1, tonal 6.4.2, chord-symbol 4.0.0
and mingus 0.6.1 agree (tests/reference/chord_classes.json). Where they split, we read:

- 9, 11 and 13 chords hold all thirds below, but for the 11th of 13 and maj13, which clashes with
  their major third and is left out in practice; m13 keeps it; 11 and maj11 keep the 3rd.
- `alt` is the altered fifth and ninth, both ways: R 3 ♭5 ♯5 ♭7 ♭9 ♯9.
- ♭13 leaves the 5th in place, ♯5 replaces it; ♯11 leaves it, ♭5 replaces it.
- `sus` is sus4; a suspension takes the place of the third, whatever the third was: Cm7sus4 is
  C7sus4. `sus9` is a sus2 with its second an octave up, R 5 9; where a seventh is meant it is
  written 9sus4. `sus7` and `sus13` are 7sus4 and 13sus4.
- `2` adds a second to the triad, `4` is sus4 (songbook practice, no source).
- `°` and `o` are the triad. Where writers differ about a symbol, `two_ways` says so.
- `dim9` is dim7 with a 9th a whole step over the octave; ø9 has the plain 9th likewise.
"""

from dataclasses import dataclass

from sitegen.harmony.chord_degree import ChordDegree, read_degrees


@dataclass(frozen=True)
class Quality:
    """A chord quality: its usual name, its degrees, and the spellings that are read as it.

    Spellings are in the signs of `signs.plain`: b # for ♭ ♯, - for every dash, Δ ° ø.
    `named` says whether symbols are printed and chords named with it; the others are only read.
    """

    name: str
    degrees: frozenset[ChordDegree]
    spellings: tuple[str, ...]
    named: bool = True


def _quality(name: str, degrees: str, spellings: str = "", *, named: bool = True) -> Quality:
    return Quality(name, read_degrees(degrees), tuple(spellings.split()), named)


_MAJ = "maj Maj MAJ M ma Ma MA Δ ^ j major Major"
_MIN = "m min Min MIN mi Mi MI - minor Minor"
_DIM = "dim Dim DIM ° o diminished"
_AUG = "aug Aug AUG + +5 augmented"
_HALF = "ø hdim halfdim half-dim halfdiminished half-diminished"


def _with(stems: str, ending: str) -> str:
    return " ".join(stem + ending for stem in stems.split())


def _across(stems: str, sevenths: str, ending: str) -> str:
    return " ".join(_with(stems, seventh + ending) for seventh in sevenths.split())


QUALITIES: tuple[Quality, ...] = (
    _quality("", "R 3 5", "maj Maj MAJ M ma Ma MA major Major"),
    _quality("m", "R ♭3 5", _MIN),
    _quality("5", "R 5", "5"),
    _quality("dim", "R ♭3 ♭5", _DIM),
    _quality("+", "R 3 ♯5", _AUG),
    _quality("add2", "R 2 3 5", "2 maj2", named=False),
    _quality("madd2", "R 2 ♭3 5", _with(_MIN, "2"), named=False),
    _quality("sus2", "R 2 5"),
    _quality("sus4", "R 4 5", "4"),
    _quality("sus9", "R 5 9", "sus9"),
    _quality("6", "R 3 5 6", "6 " + _with("maj Maj M ma", "6")),
    _quality("m6", "R ♭3 5 6", _with(_MIN, "6")),
    _quality(
        "6/9", "R 3 5 6 9", "6/9 69 " + _with("maj Maj M ma", "6/9") + " maj69 M69 add69 add6/9"
    ),
    _quality("m6/9", "R ♭3 5 6 9", _across(_MIN, "6/9 69 add69", "")),
    _quality("7", "R 3 5 ♭7", "7 dom7 dominant7"),
    _quality("maj7", "R 3 5 7", _with(_MAJ, "7") + " Δ ^ j 7M 7maj"),
    _quality("m7", "R ♭3 5 ♭7", _with(_MIN, "7")),
    _quality("mmaj7", "R ♭3 5 7", _across(_MIN, _MAJ, "7") + " " + _with(_MIN, "Δ")),
    _quality("dim7", "R ♭3 ♭5 ♭♭7", _with(_DIM, "7")),
    _quality("dimmaj7", "R ♭3 ♭5 7", _across(_DIM, _MAJ, "7")),
    _quality("m7♭5", "R ♭3 ♭5 ♭7", _HALF + " " + _with(_HALF, "7"), named=False),
    _quality("7♯5", "R 3 ♯5 ♭7", _with("aug Aug +", "7"), named=False),
    _quality("maj7♯5", "R 3 ♯5 7", _across(_AUG, _MAJ, "7"), named=False),
    _quality("9", "R 3 5 ♭7 9", "9 dom9"),
    _quality("maj9", "R 3 5 7 9", _with(_MAJ, "9")),
    _quality("m9", "R ♭3 5 ♭7 9", _with(_MIN, "9")),
    _quality("mmaj9", "R ♭3 5 7 9", _across(_MIN, _MAJ, "9")),
    _quality("9♯5", "R 3 ♯5 ♭7 9", _with("aug Aug +", "9"), named=False),
    _quality("m9♭5", "R ♭3 ♭5 ♭7 9", _with(_HALF, "9"), named=False),
    _quality("dim9", "R ♭3 ♭5 ♭♭7 9", _with(_DIM, "9")),
    _quality("11", "R 3 5 ♭7 9 11", "11 dom11"),
    _quality("maj11", "R 3 5 7 9 11", _with(_MAJ, "11")),
    _quality("m11", "R ♭3 5 ♭7 9 11", _with(_MIN, "11")),
    _quality("mmaj11", "R ♭3 5 7 9 11", _across(_MIN, _MAJ, "11")),
    _quality("m11♭5", "R ♭3 ♭5 ♭7 9 11", _with(_HALF, "11"), named=False),
    _quality("13", "R 3 5 ♭7 9 13", "13 dom13"),
    _quality("maj13", "R 3 5 7 9 13", _with(_MAJ, "13")),
    _quality("m13", "R ♭3 5 ♭7 9 11 13", _with(_MIN, "13")),
    _quality("mmaj13", "R ♭3 5 7 9 11 13", _across(_MIN, _MAJ, "13")),
    _quality("7sus4", "R 4 5 ♭7", "sus7 sus47"),
    _quality("9sus4", "R 4 5 ♭7 9"),
    _quality("13sus4", "R 4 5 ♭7 9 13", "sus13"),
    _quality("alt", "R 3 ♭5 ♯5 ♭7 ♭9 ♯9", "alt 7alt alt7 7(alt) ALT 7ALT altered"),
)
"""All qualities; the first spelling rules of the module docstring apply."""

SPELLINGS: dict[str, Quality] = {
    spelling: quality for quality in QUALITIES for spelling in quality.spellings
}
"""The quality of each spelling. No spelling is no quality at all: the major triad's is empty."""

MAJOR_TRIAD = QUALITIES[0]
