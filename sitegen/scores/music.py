"""What music21 reads in a score file, brought into our own plain values."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from music21 import expressions, harmony, key, tempo

from sitegen.scores.bars import find_bars
from sitegen.scores.exact import exact
from sitegen.scores.found import FoundKey, FoundScore, FoundTempo, FoundText
from sitegen.scores.losses import Losses, note_losses
from sitegen.scores.parsing import parse
from sitegen.scores.voices import find_voices, plain

_LONGEST_SYMBOL, _LONGEST_SECTION = 40, 60
_NUMBERED = frozenset({"musicxml", "humdrum"})
_MOST_FIFTHS = 7
# Kinds that music21 writes as something else is written here: they are told, not misread.
_MISREAD = frozenset({"augmented-11th", "diminished-minor-ninth"})


def find_score(data: bytes, form: str) -> FoundScore:
    """Return what is in a score of a kind: "musicxml", "abc", "humdrum" or "midi".

    Raises UnfitScoreError for one without bars or of a size that no song has; music21 may raise
    anything else.
    """
    losses = Losses()
    parts = parse(data, form, losses)
    bars = find_bars(parts, losses, has_numbers=form in _NUMBERED)
    voices = tuple(find_voices(parts, losses))
    for part in parts:
        note_losses(part, losses)
    chords = tuple(find_chords(parts, losses))
    return FoundScore(
        tuple(bars),
        voices,
        chords,
        tuple(_sections(parts)),
        tuple(_keys(parts)),
        tuple(_tempos(parts)),
        losses.all(),
        is_spelled=form != "midi",
    )


def _placed(parts: list[Any], kind: type) -> Iterator[tuple[Fraction, Any]]:
    """Return the elements of a kind by onset; of those at one place, those of the first part."""
    found: dict[Fraction, Any] = {}
    for part in parts:
        for one in part.recurse().getElementsByClass(kind):
            found.setdefault(exact(one.getOffsetInHierarchy(part)), one)
    yield from sorted(found.items(), key=lambda pair: pair[0])


def find_chords(parts: list[Any], losses: Losses) -> Iterator[FoundText]:
    """Return the chord symbols of all parts, as symbols are written here."""
    for onset, symbol in _placed(parts, harmony.ChordSymbol):
        figure = plain(str(symbol.figure), _LONGEST_SYMBOL + 1).replace("-", "b")
        if isinstance(symbol, harmony.NoChord):
            yield FoundText(str(onset), "N.C.")
        elif symbol.chordKind in _MISREAD or len(figure) > _LONGEST_SYMBOL:
            losses.add("chord symbols of an unusual kind", onset)
        else:
            yield FoundText(str(onset), figure.replace("power", "5"))


def _sections(parts: list[Any]) -> Iterator[FoundText]:
    for onset, mark in _placed(parts, expressions.RehearsalMark):
        if text := plain(str(mark.content), _LONGEST_SECTION):
            yield FoundText(str(onset), text)


def _keys(parts: list[Any]) -> Iterator[FoundKey]:
    for onset, found in _placed(parts, key.KeySignature):
        if abs(found.sharps or 0) <= _MOST_FIFTHS:
            is_told = isinstance(found, key.Key)
            name = f"{found.tonic.name.replace('-', 'b')} {found.mode}" if is_told else ""
            yield FoundKey(str(onset), found.sharps or 0, name)


def _tempos(parts: list[Any]) -> Iterator[FoundTempo]:
    for onset, mark in _placed(parts, tempo.MetronomeMark):
        beats = mark.number if mark.number is not None else mark.numberSounding
        if beats:
            yield FoundTempo(str(onset), float(beats), str(exact(mark.referent.quarterLength)))
