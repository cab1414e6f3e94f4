"""Pieces whose analysts marked the key beat by beat, read into our own values."""

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from bench.corpora import bach_chorales

from sitegen.harmony.key_changes import TimedNote

LocalKey = tuple[int, str]
"""The tonic's pitch class, and the mode."""

# Where fewer of the sounding notes belong to the analysis's chords, it is of another edition, in
# another key or with other bars.
_SAME_MUSIC = 0.85
_HELD_BACK = 3


@dataclass(frozen=True)
class LocalKeys:
    """A piece: its notes, its beats (quarters, and the end) and the true key of each beat.

    `stream` is what the library reads: the score, or the analysis as chords.
    """

    notes: tuple[TimedNote, ...]
    beats: tuple[Fraction, ...]
    keys: tuple[LocalKey, ...]
    is_held_back: bool
    stream: Any


def chorale_notes() -> Iterator[LocalKeys]:
    """Yield the analysed chorales as their scores' notes, if the analysis is of the same music."""
    from music21.corpus import chorales  # noqa: PLC0415 - takes a while, only here

    scores = list(chorales.Iterator(1, 20))
    for index, (path, piece) in enumerate(zip(_paths("bach/choraleAnalyses"), bach_chorales())):  # noqa: B905 - the first twenty
        numerals = _numerals(_parse(path))
        notes = tuple(
            (pitch.midi, onset, length)
            for onset, (pitch, length) in zip(piece.onsets, piece.notes, strict=True)
        )
        if _agreement(numerals, notes) >= _SAME_MUSIC:
            yield _piece(numerals, notes, index, scores[index])


def chords_of(folder: str) -> Iterator[LocalKeys]:
    """Yield the analysed pieces of a folder as the chords of their numerals."""
    for index, path in enumerate(_paths(folder)):
        analysis = _parse(path)
        numerals = _numerals(analysis)
        notes = tuple(
            (pitch.midi, onset, Fraction(numeral.quarterLength))
            for onset, numeral in numerals
            for pitch in numeral.pitches
        )
        yield _piece(numerals, notes, index, analysis)


def _paths(folder: str) -> list[Path]:
    from music21 import common  # noqa: PLC0415 - takes a while, only here

    return sorted((common.getCorpusFilePath() / folder).glob("*.rntxt"))


def _parse(path: Path) -> Any:  # noqa: ANN401 - music21 is untyped
    from music21 import converter  # noqa: PLC0415 - takes a while, only here

    return converter.parse(path)


def _numerals(analysis: Any) -> list[tuple[Fraction, Any]]:  # noqa: ANN401 - music21 is untyped
    found = analysis.recurse().getElementsByClass("RomanNumeral")
    return [(Fraction(numeral.getOffsetInHierarchy(analysis)), numeral) for numeral in found]


def _agreement(numerals: list[tuple[Fraction, Any]], notes: tuple[TimedNote, ...]) -> float:
    """Return the share of notes sounding with a numeral that its chord holds."""
    heard = [
        int(note) % 12 in set(numeral.pitchClasses)  # type: ignore[arg-type]
        for onset, numeral in numerals
        for note, start, length in notes
        if start <= onset < start + length
    ]
    return sum(heard) / max(len(heard), 1)


def _piece(
    numerals: list[tuple[Fraction, Any]],
    notes: tuple[TimedNote, ...],
    index: int,
    stream: Any,  # noqa: ANN401 - music21 is untyped
) -> LocalKeys:
    onsets = [onset for onset, _ in numerals]
    end = onsets[-1] + Fraction(numerals[-1][1].quarterLength)
    beats = [Fraction(beat) for beat in range(int(onsets[0]), -(-end // 1) + 1)]
    keys = [numerals[max(bisect_right(onsets, beat) - 1, 0)][1].key for beat in beats[:-1]]
    return LocalKeys(
        notes,
        tuple(beats),
        tuple((key.tonic.pitchClass, key.mode) for key in keys),
        index % _HELD_BACK == _HELD_BACK - 1,
        stream,
    )
