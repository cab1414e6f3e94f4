"""What each degree of a key says for that key: by how it fills a piece, ends it and frames it.

The weights were estimated by softmax regression over the 24 major and minor keys, from pieces of
four collections that music21 carries: of every three, two of the chorales harmonised by Bach, of
Ryan's Mammoth Collection, of O'Neill's Music of Ireland and of Aird's Airs, whole and cut short.
`tests/bench/estimate_profiles.py` holds the procedure. They stand in for the profiles of listening
tests and textbooks, which look at the body of a piece only.
"""

from dataclasses import dataclass

DegreeWeights = tuple[float, ...]
"""A weight for each of twelve degrees, from the tonic up in semitones."""


@dataclass(frozen=True)
class KeyProfile:
    """How much each degree speaks for a key, in natural units of log-odds.

    `body` weighs the square roots of the degrees' shares of all durations, `opening` and
    `closing` their shares among the first and the last notes, `final` the last note's bass.
    """

    body: DegreeWeights
    final: DegreeWeights
    opening: DegreeWeights
    closing: DegreeWeights

    def swapped(self, *degrees: tuple[int, int]) -> "KeyProfile":
        """Return the profile of a mode that has one degree of each pair in the other's place."""
        rows = [list(row) for row in (self.body, self.final, self.opening, self.closing)]
        for here, there in degrees:
            for row in rows:
                row[here], row[there] = row[there], row[here]
        return KeyProfile(*(tuple(row) for row in rows))


_MAJOR = KeyProfile(
    body=(10.0, -5.2, -0.1, -6.4, 7.0, 4.3, -9.0, 5.5, -7.5, -2.2, -9.5, 5.9),
    final=(1.5, -1.2, 0.3, -0.6, 0.3, 0.2, -0.3, 0.2, 0.0, 0.5, 0.4, 0.2),
    opening=(6.0, -1.0, 1.1, -2.6, 4.0, -2.5, -2.5, 6.1, -2.4, 1.0, -3.2, -3.2),
    closing=(2.6, -2.0, 1.8, -1.1, -0.1, 0.8, -1.0, 3.0, -0.4, 1.2, -2.2, -0.7),
)
_MINOR = KeyProfile(
    body=(8.8, -6.2, 3.1, 4.7, -6.7, 0.3, -4.6, 9.0, 0.9, -7.6, 1.3, 2.9),
    final=(0.8, 1.5, -0.7, -0.3, 0.9, -0.6, -0.4, -0.8, -1.4, 0.4, -0.3, -0.6),
    opening=(4.7, -4.0, -0.2, 0.8, -1.3, 0.8, -0.5, 3.8, -1.4, -3.0, 1.7, -2.7),
    closing=(2.9, -2.0, 0.4, 1.0, 2.1, -0.5, -1.6, 2.8, -1.6, -3.5, 1.4, -2.9),
)

# A mode differs from major or minor in the places of one or two degrees.
PROFILES = {
    "lydian": _MAJOR.swapped((5, 6)),
    "major": _MAJOR,
    "mixolydian": _MAJOR.swapped((10, 11)),
    "dorian": _MINOR.swapped((8, 9)),
    "minor": _MINOR,
    "phrygian": _MINOR.swapped((1, 2)),
    "locrian": _MINOR.swapped((1, 2), (6, 7)),
}
"""The profile of each mode that a key can have."""
