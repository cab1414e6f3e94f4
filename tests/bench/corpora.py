"""Collections that music21 carries, read into our own values; nothing is written."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from pathlib import Path
from typing import Any

from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

_MODES = {"": "major", "maj": "major", "m": "minor", "min": "minor"}
_FIELD = re.compile(r"^[A-Za-z]:.*$", re.MULTILINE)
_ACCIDENTAL = re.compile(r"[_^=][A-Ga-g]")
_KEY_FIELD = re.compile(r"^K: *([A-G])([b#]?) *([A-Za-z]*)", re.MULTILINE)


Note = tuple[Fraction, Pitch, Fraction]
"""Onset, pitch and length."""


@dataclass(frozen=True)
class Piece:
    """Notes in order of time, low to high where they sound together, tied notes joined.

    `key` is the key that the source states, if it states one major or minor key;
    `final_bass` is the last note of the lowest part. `onsets` are those of the notes, `bar` is
    the length of a bar; neither takes part in equality.
    """

    notes: tuple[tuple[Pitch, Fraction], ...]
    signatures: frozenset[int]
    key: Key | None
    final_bass: PitchName
    onsets: tuple[Fraction, ...] = field(default=(), compare=False)
    bar: Fraction = field(default=Fraction(4), compare=False)


@lru_cache(maxsize=1)
def bach_chorales() -> tuple[Piece, ...]:
    """Return the 371 chorales in Riemenschneider's order, doublets included."""
    from music21.corpus import chorales  # noqa: PLC0415 - takes a while, only here

    return tuple(_piece(score, None) for score in chorales.Iterator())


@lru_cache(maxsize=1)
def ryans_mammoth() -> tuple[Piece, ...]:
    """Return the tunes of Ryan's Mammoth Collection with the keys of their K: fields."""
    return tuple(piece for text in _abc_texts("ryansMammoth") for piece in _tunes(text))


@lru_cache(maxsize=1)
def oneills_and_airds() -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """Return the tunes of O'Neill's Music of Ireland and of Aird's Airs."""
    oneills, airds = (
        tuple(piece for text in _abc_texts(folder) for piece in _tunes(text))
        for folder in ("oneills1850", "airdsAirs")
    )
    return oneills, airds


@lru_cache(maxsize=1)
def essen_sample(every: int = 26) -> tuple[Piece, ...]:
    """Return one tune of every so many of the Essen collection; its K: fields name tonics."""
    texts = _abc_texts("essenFolksong")[every - 1 :: every]
    return tuple(piece for text in texts for piece in _tunes(text))


def tunes_with_accidentals(folder: str, every: int = 3) -> tuple[Piece, ...]:
    """Return one of every so many tunes of a folder that have accidentals before notes."""
    texts = [t for t in _abc_texts(folder) if _ACCIDENTAL.search(_FIELD.sub("", t))]
    return tuple(piece for text in texts[every - 1 :: every] for piece in _tunes(text))


def analysed_chorales() -> list[tuple[Piece, Key]]:
    """Return the chorales that are analysed in Roman numerals, with their home keys.

    The home key is the first that the analysis names. Two analyses are of the hymn in another key
    than the score's; the key is moved to where the first bass note of the analysis is the score's.
    """
    from music21 import converter  # noqa: PLC0415 - takes a while, only here

    chorales = []
    for path in sorted((_folder("bach") / "choraleAnalyses").glob("riemenschneider*.rntxt")):
        piece = bach_chorales()[int(path.stem.removeprefix("riemenschneider")) - 1]
        analysis: Any = converter.parse(path, format="romantext", forceSource=True)
        numeral = analysis.recurse().getElementsByClass("RomanNumeral")[0]
        lowest = piece.notes[0][0].name
        moved = lowest.fifths - _pitch(numeral.bass()).name.fifths
        tonic = PitchName.at_fifths(_pitch(numeral.key.tonic).name.fifths + moved)
        chorales.append((piece, Key(tonic, numeral.key.mode)))
    return chorales


def _abc_texts(folder: str) -> list[str]:
    """Return the text of every tune of a folder, in the order of its files."""
    texts = []
    for path in sorted(_folder(folder).glob("*.abc")):
        text = path.read_text(encoding="utf-8", errors="replace")
        texts += re.split(r"^(?=X:)", text, flags=re.MULTILINE)[1:]
    return texts


def _folder(name: str) -> Path:
    import music21  # noqa: PLC0415 - takes a while, only here

    return Path(music21.__file__).parent / "corpus" / name


def _tunes(text: str) -> Iterator[Piece]:
    """Yield the tune of a text, unless it holds no notes or cannot be read."""
    from music21 import converter  # noqa: PLC0415 - takes a while, only here

    try:
        score = converter.parse(text, format="abc", forceSource=True)
    except Exception:  # noqa: BLE001 - some tunes of the collections are faulty; they are left out
        return
    score = getattr(score, "scores", [score])[0]
    if score.recurse().notes:
        yield _piece(score, _stated_key(text))


def _stated_key(text: str) -> Key | None:
    fields = {
        (letter, sign, mode[:3].lower() if len(mode) > 1 else mode.lower())
        for letter, sign, mode in _KEY_FIELD.findall(text)
    }
    if len(fields) != 1:
        return None
    letter, sign, mode = fields.pop()
    return Key(PitchName.read(letter + sign), _MODES[mode]) if mode in _MODES else None


def _piece(score: Any, key: Key | None) -> Piece:  # noqa: ANN401 - music21 is untyped
    lines = [_line(part) for part in score.parts or [score]]
    timed = sorted(
        (note for line in lines for note in line), key=lambda note: (note[0], note[1].midi)
    )
    signatures = score.recurse().getElementsByClass("KeySignature")
    meters = score.recurse().getElementsByClass("TimeSignature")
    return Piece(
        notes=tuple((pitch, length) for _, pitch, length in timed),
        signatures=frozenset(found.sharps for found in signatures) or frozenset((0,)),
        key=key,
        final_bass=max(lines[-1], key=lambda note: note[0])[1].name,
        onsets=tuple(onset for onset, _, _ in timed),
        bar=Fraction(meters[0].barDuration.quarterLength) if meters else Fraction(4),
    )


def _line(part: Any) -> list[Note]:  # noqa: ANN401 - music21 is untyped
    """Return the notes of a part, tied ones joined; chord symbols and grace notes left out."""
    line: list[Note] = []
    tied: dict[Pitch, int] = {}
    for event in part.flatten().notes:
        if event.duration.isGrace or "Harmony" in event.classes:
            continue
        for note in getattr(event, "notes", (event,)):
            onset, length, pitch = Fraction(event.offset), event.quarterLength, _pitch(note.pitch)
            tie = note.tie.type if note.tie else ""
            before = tied.pop(pitch, None) if tie in ("continue", "stop") else None
            if before is None:
                line.append((onset, pitch, Fraction(length)))
            else:
                line[before] = (*line[before][:2], line[before][2] + Fraction(length))
            if tie in ("start", "continue"):
                tied[pitch] = len(line) - 1 if before is None else before
    return line


def _pitch(pitch: Any) -> Pitch:  # noqa: ANN401 - music21 is untyped
    return Pitch(PitchName(pitch.step, int(pitch.alter)), pitch.implicitOctave)
