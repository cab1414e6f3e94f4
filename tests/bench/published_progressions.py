"""Progressions of published collections, as charts that can be searched; music21 carries all.

- Bach's chorales, a chord for every quarter whose notes make a chord of thirds as spelled;
- the twenty chorales and the Monteverdi madrigals whose analysts wrote numerals;
- the tunes with chord symbols of the Nottingham sample and of two lead sheets.
"""

import re
from collections.abc import Iterator, Sequence
from functools import cache, lru_cache
from typing import Any, NamedTuple

from bench.corpora import Piece, bach_chorales

from sitegen.finding import ChartEntry, Entry, Progression
from sitegen.finding.chords import as_searched
from sitegen.harmony import find_key, name_chord, read_chord
from sitegen.harmony.progressions import make_progression
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_FEWEST_CHORDS, _FEWEST_NOTES = 8, 3
_KEY_FIELD = re.compile(r"^K: *([A-G][b#]?)(m?)$", re.MULTILINE)
_IN_QUOTES = re.compile(r'"([A-G][^"]*)"')
_SMALL_BASS = re.compile(r"/([a-g])")


class Source(NamedTuple):
    """A piece and its chords."""

    name: str
    progression: Progression


def entries_of(sources: Sequence[Source]) -> list[Entry]:
    """Return a write-up for each piece, with one chart."""
    return [
        Entry((ChartEntry("chart-1", "Example 1", "", "changes", progression=source.progression),))
        for source in sources
    ]


@lru_cache(maxsize=1)
def published_progressions() -> tuple[Source, ...]:
    """Return the progressions of all collections, pieces in the order of their collections."""
    return (*analysed("bach/choraleAnalyses"), *analysed("monteverdi"), *chorales(), *tunes())


def analysed(folder: str, most: int | None = None) -> Iterator[Source]:
    """Yield the pieces of a folder that have an analysis in numerals, in its first key."""
    from music21 import common, converter  # noqa: PLC0415 - takes a while, only here

    for path in sorted((common.getCorpusFilePath() / folder).glob("*.rntxt"))[:most]:
        numerals = list(converter.parse(path).recurse().getElementsByClass("RomanNumeral"))
        named = [([_name(p.name) for p in one.pitches], _key(one.key)) for one in numerals]
        chords = [chord for names, key in named if (chord := _chord(names, key)) is not None]
        yield from _source(path.stem, chords, named[0][1])


def chorales() -> Iterator[Source]:
    """Yield the chorales, in the keys that their notes are in."""
    for number, piece in enumerate(bach_chorales(), start=1):
        key = find_key(piece.notes)[0].key
        chords = [chord for beat in _beats(piece) if (chord := _chord(beat, key)) is not None]
        yield from _source(f"chorale {number}", chords, key)


def tunes() -> Iterator[Source]:
    """Yield the tunes with chord symbols."""
    from music21 import common, converter  # noqa: PLC0415 - takes a while, only here

    corpus = common.getCorpusFilePath()
    for path in sorted((corpus / "nottingham-dataset").glob("*.abc")):
        for text in path.read_text(encoding="utf-8").split("X:")[1:]:
            field = _KEY_FIELD.search(text)
            key = field and Key.read(f"{field[1]} {'minor' if field[2] else 'major'}")
            chords = _read(_SMALL_BASS.sub(_capital, one) for one in _IN_QUOTES.findall(text))
            yield from _source(f"{path.stem} {text.split()[0]}", chords, key)
    for path in sorted((corpus / "leadSheet").glob("*.mxl")):
        found = converter.parse(path).recurse().getElementsByClass("ChordSymbol")
        chords = _read(symbol.figure.replace("-", "b") for symbol in found)
        yield from _source(path.stem, chords, None)


def _source(name: str, chords: Sequence[Chord], key: Key | None) -> Iterator[Source]:
    progression = as_searched(make_progression(chords, key))
    if progression is not None and len(progression.steps) >= _FEWEST_CHORDS:
        yield Source(name, progression)


def _read(symbols: Iterator[str]) -> list[Chord]:
    chords = []
    for symbol in symbols:
        try:
            chord = read_chord(symbol)
        except ChordSymbolError:
            continue
        if isinstance(chord, Chord):
            chords.append(chord)
    return chords


def _capital(bass: re.Match[str]) -> str:
    return bass[0].upper()


def _beats(piece: Piece) -> Iterator[list[PitchName]]:
    """Yield the names of the notes that sound on each quarter, low to high."""
    timed = list(zip(piece.onsets, piece.notes, strict=True))
    for beat in range(int(max(piece.onsets)) + 1):
        yield [p.name for onset, (p, length) in timed if onset <= beat < onset + length]


def _chord(names: Sequence[PitchName], key: Key | None) -> Chord | None:
    """Return the chord of thirds that the names spell, the bass first; None where they do not."""
    names = tuple(dict.fromkeys(names))
    return _named(names, key) if len(names) >= _FEWEST_NOTES else None


@cache
def _named(names: tuple[PitchName, ...], key: Key | None) -> Chord | None:
    chords = [naming.chord for naming in name_chord(names, key) if naming.chord is not None]
    spelled = [chord for chord in chords if set(chord.members) == set(names)]
    return next((chord for chord in spelled if "6" not in chord.degrees), None)


def _key(key: Any) -> Key:  # noqa: ANN401 - a value of music21
    return Key(_name(key.tonic.name), key.mode)


def _name(name: str) -> PitchName:
    return PitchName.read(name.replace("-", "b"))
