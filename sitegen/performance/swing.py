"""Swing as it is heard: the beat's second half comes late.

Written eighths of a swung or shuffled chart are played long and short, two to one, and what is
written inside the halves of a beat moves with them. Two to one is the usual notation's reading;
in real playing the ratio falls as the tempo rises (Friberg and Sundström, "Swing Ratios and
Ensemble Timing in Jazz Performance", 2002; from memory). Beats divided in three stay as written.
"""

from fractions import Fraction

_HALF, _LONG = Fraction(1, 2), Fraction(2, 3)
_THIRDS = 3


def swung(offset: Fraction) -> Fraction:
    """Return when something written `offset` quarters after a bar's first beat is heard.

    For meters whose beat is a quarter; onsets in thirds of a beat are left where they are.
    """
    beat, rest = divmod(offset, 1)
    if rest.denominator % _THIRDS == 0:
        return offset
    if rest <= _HALF:
        return beat + rest * _LONG / _HALF
    return beat + _LONG + (rest - _HALF) * (1 - _LONG) / _HALF
