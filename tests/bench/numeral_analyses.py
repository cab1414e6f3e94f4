"""The numerals of music21's analyses, with ours and the library's of the same notes."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path
from typing import Any

from bench.library_numerals import equalize, library_figure

from sitegen.harmony import name_chord, roman_line
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_HELD_BACK, _TRIAD = 3, 3
_ADDED = re.compile(r"6|add|sus")


@dataclass(frozen=True)
class Case:
    """A numeral of an analysis, ours and the library's, all in one convention."""

    written: str
    place: str
    ours: str
    library: str
    is_held_back: bool

    @property
    def is_applied(self) -> bool:
        """True for a numeral with a stroke, `V7/ii`."""
        return "/" in self.written


def read_chorales() -> Iterator[Case]:
    """Yield every numeral of the twenty analysed chorales."""
    for number, path in _analyses("bach/choraleAnalyses"):
        yield from _read_piece(path, _numerals(path), is_held_back=_is_held_back(number))


def read_madrigals() -> Iterator[Case]:
    """Yield the numerals of three or more notes of the madrigals that are held back."""
    for number, path in _analyses("monteverdi"):
        if _is_held_back(number):
            complete = [n for n in _numerals(path) if len({p.name for p in n.pitches}) >= _TRIAD]
            yield from _read_piece(path, complete, is_held_back=True)


def _is_held_back(number: int) -> bool:
    return number % _HELD_BACK == _HELD_BACK - 1


def _analyses(folder: str) -> Iterator[tuple[int, Path]]:
    from music21 import common  # noqa: PLC0415 - takes a second

    yield from enumerate(sorted((common.getCorpusFilePath() / folder).glob("*.rntxt")))


def _numerals(path: Path) -> list[Any]:
    from music21 import converter  # noqa: PLC0415 - takes a second

    return list(converter.parse(path).recurse().getElementsByClass("RomanNumeral"))


def _read_piece(path: Path, numerals: list[Any], *, is_held_back: bool) -> Iterator[Case]:
    for _, passage in groupby(numerals, key=lambda numeral: str(numeral.key)):
        yield from _read_passage(list(passage), path.stem, is_held_back)


def _read_passage(passage: list[Any], piece: str, is_held_back: bool) -> Iterator[Case]:
    key = _key(passage[0].key)
    chords = [_name(numeral, key) for numeral in passage]
    for numeral, ours in zip(passage, roman_line(chords, key), strict=True):
        yield Case(
            equalize(numeral.figure, key, is_ours=False),
            f"{piece} bar {numeral.measureNumber} {key}",
            equalize(ours, key, is_ours=True),
            equalize(library_figure(numeral.pitches, numeral.key), key, is_ours=False),
            is_held_back,
        )


def _key(key: Any) -> Key:  # noqa: ANN401 - a value of music21
    return Key(_pitch_name(key.tonic.name), key.mode)


def _pitch_name(name: str) -> PitchName:
    return PitchName.read(name.replace("-", "b"))


def _name(numeral: Any, key: Key) -> Chord:  # noqa: ANN401 - a value of music21
    """Return the chord of a numeral's notes; chorales are made of thirds, not added sixths."""
    names = list(dict.fromkeys(_pitch_name(pitch.name) for pitch in numeral.pitches))
    chords = [naming.chord for naming in name_chord(names, key) if naming.chord is not None]
    spelled = [chord for chord in chords if set(chord.members) == set(names)]
    return next((c for c in spelled if not _ADDED.search(c.quality)), chords[0])
