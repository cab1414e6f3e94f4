"""How chords may be typed where progressions are looked up: a table of suffixes and of numerals.

The browser reads no grammar of symbols: it looks up what stands between root and bass. The table
is made by reading and naming chords here, so that both read the same; a symbol that is not in it
has several alterations that hardly anybody types together.
"""

from collections.abc import Iterator
from functools import lru_cache
from itertools import permutations

import msgspec

from sitegen.harmony import read_chord
from sitegen.harmony.figures import bass_text
from sitegen.harmony.numerals import write_numeral
from sitegen.harmony.progressions import core
from sitegen.harmony.qualities import QUALITIES, SPELLINGS
from sitegen.harmony.signs import plain
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.score.chord import Chord
from sitegen.score.key import Key

_ADDED = "b5 #5 b6 #4 b9 #9 9 11 #11 13 b13 add9 add11 add13 no3 no5 sus2 sus4".split()
_PAIRED = "b5 #5 b9 #9 #11 b13".split()
_PAIRS_ON = ("7", "9", "13", "m7", "maj7")
_BASSES = ("E", "Eb", "G", "Gb", "G#", "Bb", "B", "Bbb", "A")
_ROOT = "C"
_KEYS = (Key.read("C major"), Key.read("C minor"))


@lru_cache(maxsize=1)
def readings_file() -> bytes:
    """Return the table as JSON: `kinds` are [notes, family], the others map a text to a kind.

    `suffixes` are those of chord symbols in plain signs without brackets, `numerals` are numerals
    on the first degree, "I7" or "i°", as `sitegen.harmony.roman` writes them.
    """
    kinds: dict[tuple[str, str], int] = {}

    def number(chord: Chord) -> int:
        found = core(chord)
        return kinds.setdefault((found.notes, found.family), len(kinds))

    suffixes = {suffix: number(chord) for suffix, chord in _suffixes()}
    numerals = {text: number(chord) for text, chord in _numerals()}
    table = {"kinds": list(kinds), "suffixes": suffixes, "numerals": numerals}
    return msgspec.json.encode(table)


def _suffixes() -> Iterator[tuple[str, Chord]]:
    names = [plain(quality.name) for quality in QUALITIES]
    written = [*names, *SPELLINGS]
    written += [name + added for name in names for added in _ADDED]
    written += [f"{name}{a}{b}" for name in _PAIRS_ON for a, b in permutations(_PAIRED, 2)]
    for suffix in dict.fromkeys(written):
        # Without brackets the sign would be the root's: Cb5 is a power chord on C flat.
        chord = _read(f"{_ROOT}({suffix})" if suffix[:1] in ("b", "#") else _ROOT + suffix)
        if chord is not None and chord.bass == chord.root:
            yield suffix.replace("(", "").replace(")", ""), chord


def _numerals() -> Iterator[tuple[str, Chord]]:
    told: set[str] = set()
    for chord in _chords_on_the_tonic():
        for key in _KEYS:
            text = plain(write_numeral(chord, key, None))
            if text not in told:
                told.add(text)
                yield text, chord


def _chords_on_the_tonic() -> Iterator[Chord]:
    for quality in QUALITIES:
        for bass in ("", *_BASSES):
            slash = f"/{bass}" if bass else ""
            chord = _read(f"{_ROOT}{plain(quality.name)}{slash}")
            # A bass without a figure is a degree of the key, "I5/5", and is read by itself.
            if chord is not None and bass_text(chord) is not None:
                yield chord


def _read(symbol: str) -> Chord | None:
    try:
        found = read_chord(symbol)
    except ChordSymbolError:
        return None
    return found if isinstance(found, Chord) else None
