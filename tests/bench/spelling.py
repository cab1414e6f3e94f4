"""How often a note outside the signature gets its name back from MIDI numbers and the signature.

A note counts as a case when its true name or the name it is given lies outside the signature, so
that a wrong name for a note of the scale is a miss too. Pieces with one signature throughout, in
every distinct chorale and every tune; of every three the third was held back when the weights of
`spelling_profile` were estimated.
"""

from collections.abc import Sequence
from fractions import Fraction

from bench.corpora import Piece, bach_chorales, ryans_mammoth
from bench.figure import Figure

from sitegen.harmony import spell


def measure() -> list[Figure]:
    """Return the figures of both collections; music21 has no counterpart."""
    bach = with_one_signature(tuple(dict.fromkeys(bach_chorales())))
    ryans = with_one_signature(ryans_mammoth())
    goals = {"Bach chorales": Fraction(985, 1000), "Ryan's Mammoth": Fraction(98, 100)}
    return [
        figure
        for (name, goal), pieces in zip(goals.items(), (bach, ryans), strict=True)
        for figure in (
            _figure(name, pieces, goal),
            _figure(f"{name}, held back", pieces[2::3], goal),
        )
    ]


def with_one_signature(pieces: Sequence[Piece]) -> list[Piece]:
    """Return the pieces that keep one signature throughout."""
    return [piece for piece in pieces if len(piece.signatures) == 1]


def _figure(cases_of: str, pieces: Sequence[Piece], target: Fraction) -> Figure:
    answers = [answer for piece in pieces for answer in _outside(piece)]
    return Figure("spelling, outside the signature", cases_of, sum(answers), len(answers), target)


def _outside(piece: Piece) -> list[bool]:
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
