"""How often a note outside the signature gets its name back from MIDI numbers and the signature.

A note counts as a case when its true name or the name it is given lies outside the signature, so
that a wrong name for a note of the scale is a miss too. Pieces with one signature throughout, in
every distinct chorale and every tune of Ryan's; of every three the third was held back when
`spelling_profile` was estimated and its features were chosen. O'Neill's and Aird's tunes are held
back altogether: the third of every three that have accidentals, since all others have no cases.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from bench.corpora import Piece, bach_chorales, ryans_mammoth, tunes_with_accidentals
from bench.figure import Figure

from sitegen.harmony import spell

_BACH, _TUNES = Fraction(985, 1000), Fraction(98, 100)


def measure() -> list[Figure]:
    """Return the figures of all collections; music21 has no counterpart."""
    oneills = with_one_signature(tunes_with_accidentals("oneills1850"))
    airds = with_one_signature(tunes_with_accidentals("airdsAirs"))
    return [
        *_figures("Bach chorales", distinct_chorales(), _BACH),
        *_figures("Ryan's Mammoth", tunes_of_ryans(), _TUNES),
        _figure("O'Neill's, sample, held back", oneills, _TUNES),
        _figure("Aird's, sample, held back", airds, _TUNES),
    ]


def distinct_chorales() -> list[Piece]:
    """Return the chorales with one signature, each once."""
    return with_one_signature(tuple(dict.fromkeys(bach_chorales())))


def tunes_of_ryans() -> list[Piece]:
    """Return the tunes of Ryan's Mammoth Collection with one signature."""
    return with_one_signature(ryans_mammoth())


def with_one_signature(pieces: Sequence[Piece]) -> list[Piece]:
    """Return the pieces that keep one signature throughout."""
    return [piece for piece in pieces if len(piece.signatures) == 1]


def _figures(name: str, pieces: Sequence[Piece], target: Fraction) -> Iterator[Figure]:
    yield _figure(name, pieces, target)
    yield _figure(f"{name}, held back", pieces[2::3], target)


def _figure(cases_of: str, pieces: Sequence[Piece], target: Fraction) -> Figure:
    answers = [answer for piece in pieces for answer in answers_in(piece)]
    return Figure("spelling, outside the signature", cases_of, sum(answers), len(answers), target)


def answers_in(piece: Piece) -> list[bool]:
    """Return for each case of a piece whether its name is right."""
    (signature,) = piece.signatures
    scale = range(signature - 1, signature + 6)
    names = [pitch.name for pitch, _ in piece.notes]
    given = [pitch.name for pitch in spell([pitch.midi for pitch, _ in piece.notes], signature)]
    return [
        true == ours
        for true, ours in zip(names, given, strict=True)
        if not (true.fifths in scale and ours.fifths in scale)
    ]
