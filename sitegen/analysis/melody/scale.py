"""Which degrees of the key a part uses, which scale they make, and what lies outside the key.

All notes of the part count, those below its line too. Degrees are those of `key_degree`, against
the major scale on the tonic. A scale is named only where ten notes or more use every one of its
degrees and no other, and always from the key's tonic: a line that uses the notes of G major
pentatonic in E minor is minor pentatonic on E.

Pentatonic scales: major 1 2 3 5 6, minor 1 ♭3 4 5 ♭7; blues scale 1 ♭3 4 ♭5 5 ♭7 (♯4 is read as
♭5); major hexatonic 1 2 3 4 5 6; harmonic and melodic minor with their raised degrees (common
practice). The seven notes of the key's own mode bear its name. In a minor key the raised 7 is at
home, and the raised 6 right before or after it, as in melodic minor; they are not chromatic.
"""

from functools import lru_cache

from sitegen.analysis.melody.line import MelodicLine, place_of
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Fact, NoteReading
from sitegen.analysis.wording import capitalised, the_part, times_word
from sitegen.harmony import key_degree
from sitegen.score.key import Key

_SCALES = {
    "1 2 3 5 6": "major pentatonic",
    "1 ♭3 4 5 ♭7": "minor pentatonic",
    "1 ♭3 4 ♭5 5 ♭7": "blues scale",
    "1 ♭3 4 ♯4 5 ♭7": "blues scale",
    "1 2 3 4 5 6": "major hexatonic",
    "1 2 ♭3 4 5 ♭6 7": "harmonic minor",
    "1 2 ♭3 4 5 6 7": "melodic minor",
}
# What is rarer than a key's own seven notes is told.
_TELLING = ("major pentatonic", "minor pentatonic", "blues scale")
_ENOUGH = 10
_MOST_TOLD = 3
# No more than one note in so many.
_FEW = 4
_RAISED_SIXTH, _RAISED_SEVENTH = "6", "7"


def scale_facts(line: MelodicLine, key: Key | None) -> list[Fact]:
    """Return the degrees of a part, its scale and its chromatic notes; nothing without a key."""
    if key is None:
        return []
    found = [note.key_degree for note in line.heard]
    used = sorted({*found}, key=_order)
    first = tuple(place_of(line.heard[index]) for index in sorted(map(found.index, used)))
    text = " ".join(used)
    facts = [Fact(f"{line.prefix}.key-degrees", text, text, "", first)]
    scale = _scale(text, key) if len(found) >= _ENOUGH else ""
    if scale:
        name = capitalised(the_part(line.part))
        telling = scale.startswith(_TELLING) and not line.is_bass
        sentence = f"{name} keeps to the {scale}." if telling else ""
        facts.append(Fact(f"{line.prefix}.scale", scale, scale, "", first, sentence))
    home = _at_home(found, key)
    outside = [note for note, is_home in zip(line.heard, home, strict=True) if not is_home]
    return [*facts, _chromatic(line, outside, key, tell=not scale)] if outside else facts


def _order(degree: str) -> tuple[int, int]:
    """Return where a degree stands in a list, flats before naturals before sharps."""
    signs = degree[:-1]
    return int(degree[-1]), len(signs) if "♯" in signs else -len(signs)


def _scale(degrees: str, key: Key) -> str:
    """Return the name of the scale that has exactly these degrees, "" for none."""
    if degrees == " ".join(_own_degrees(key)):
        return str(key)
    return f"{_SCALES[degrees]} on {key.tonic}" if degrees in _SCALES else ""


@lru_cache(maxsize=64)
def _own_degrees(key: Key) -> tuple[str, ...]:
    return tuple(key_degree(name, key) for name in key.scale)


def _at_home(degrees: list[str], key: Key) -> list[bool]:
    """Return which of the notes with these degrees, in order of time, belong to the key."""
    own = {*_own_degrees(key)}
    if key.mode != "minor":
        return [degree in own for degree in degrees]
    around = zip(["", *degrees], degrees, [*degrees[1:], ""], strict=False)
    home = own | {_RAISED_SEVENTH}
    return [
        degree in home or (degree == _RAISED_SIXTH and _RAISED_SEVENTH in (before, after))
        for before, degree, after in around
    ]


def _chromatic(line: MelodicLine, outside: list[NoteReading], key: Key, *, tell: bool) -> Fact:
    """Return the notes outside the key; a few in a longer line are told where `tell` says so."""
    told = dict.fromkeys((note.bar, str(note.note.pitch)) for note in outside)
    count, sentence = len(outside), ""
    few = len(told) <= _MOST_TOLD and _FEW * count <= len(line.heard)
    if tell and few and len(line.heard) >= _ENOUGH:
        where = listed(f"{pitch} in {bars_said([bar])}" for bar, pitch in told)
        name = the_part(line.part)
        sentence = capitalised(f"{name} leaves {key} {times_word(len(told))}: {where}.")
    unit = "note outside the key" if count == 1 else "notes outside the key"
    path = f"{line.prefix}.chromatic-notes"
    return Fact(path, count, str(count), unit, tuple(map(place_of, outside)), sentence)
