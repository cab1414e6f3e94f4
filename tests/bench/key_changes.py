"""How many beats of a piece that changes its key are given the right local key.

Truths are the keys that the analysts of music21's Bach chorales and Monteverdi madrigals wrote
before their numerals; a beat is a quarter. The chorales are asked twice, as the notes of the score
(without three whose analysis is of another edition) and as the chords of the numerals alone; the
madrigals as chords. Every third piece was held back from the weights of `local_key_profiles`, and
of the madrigals held back every second is asked, since the library takes ten seconds for each.

The issue names no target; the goal printed is the library's own count. The library's answer is its
floating analysis by measures, with the small window that it advises for chorales.
"""

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from bench.figure import Figure
from bench.local_keys import LocalKey, LocalKeys, chorale_notes, chords_of

from sitegen.harmony.key_changes import find_key_changes

_CHORALE_WINDOW, _USUAL_WINDOW = 2, 4


def measure() -> list[Figure]:
    """Return the figures of the chorales, as notes and as chords, and of the madrigals."""
    notes, chords = list(chorale_notes()), list(chords_of("bach/choraleAnalyses"))
    madrigals = [piece for piece in chords_of("monteverdi") if piece.is_held_back]
    figures = []
    for name, pieces in (("notes", notes), ("numerals", chords)):
        seen = [piece for piece in pieces if not piece.is_held_back]
        held = [piece for piece in pieces if piece.is_held_back]
        figures.append(_figure(f"chorales, {name}, looked at", seen, _CHORALE_WINDOW))
        figures.append(_figure(f"chorales, {name}, held back", held, _CHORALE_WINDOW))
    figures.append(_figure("8 madrigals, numerals, held back", madrigals[1::2], _USUAL_WINDOW))
    return figures


def _figure(cases_of: str, pieces: Sequence[LocalKeys], window: int) -> Figure:
    ours = sum(_right(piece, find_local_keys(piece)) for piece in pieces)
    library = sum(_right(piece, _library(piece, window)) for piece in pieces)
    beats = sum(len(piece.keys) for piece in pieces)
    target = Fraction(library, beats)
    return Figure("local key of a beat", cases_of, ours, beats, target, "music21", library)


def _right(piece: LocalKeys, answers: Sequence[LocalKey]) -> int:
    return sum(truth == answer for truth, answer in zip(piece.keys, answers, strict=True))


def find_local_keys(piece: LocalKeys) -> list[LocalKey]:
    """Return our key for each beat."""
    stretches = find_key_changes(piece.notes, piece.beats)
    return [
        (stretch.key.tonic.pitch_class, stretch.key.mode)
        for stretch in stretches
        for beat in piece.beats[:-1]
        if stretch.start <= beat < stretch.end
    ]


def _library(piece: LocalKeys, window: int) -> list[LocalKey]:
    """Return the library's key for each beat: that of its measure."""
    from music21.analysis import floatingKey  # noqa: PLC0415 - takes a while, only here

    library: Any = floatingKey
    analyzer = library.KeyAnalyzer(piece.stream)
    analyzer.windowSize = window
    found = iter(analyzer.run())
    part = piece.stream.parts[0]
    keys = {
        Fraction(measure.offset): next(found, None) if raw is not None else None
        for measure, raw in zip(
            part.getElementsByClass("Measure"), analyzer.rawKeyByMeasure, strict=True
        )
    }
    answers = []
    for beat in piece.beats[:-1]:
        key = keys[max((start for start in keys if start <= beat), default=min(keys))]
        answers.append((key.tonic.pitchClass, key.mode) if key is not None else (-1, ""))
    return answers
