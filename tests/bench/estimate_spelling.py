"""Estimate the weights of `spelling_profile` again.

Run `PYTHONPATH=tests python -m bench.estimate_spelling`; it reads for some five minutes and prints
the table, and how many names cross-validation gets wrong. With `--check` it compares the table
with the one in the code instead, and exits with 1 where they differ.

A logistic regression of sharp against flat over the notes outside the signature, in two of every
three chorales by Bach and tunes of Ryan's Mammoth Collection. Where few notes speak, a ridge holds
the weights to what books on harmony teach of chromatic scales, passing and neighbouring notes: up
by a semitone in sharps, down in flats but for the ♯4 (Kostka and Payne, Tonal Harmony; Read, Music
Notation; from memory). The ridges, the strength of that rule and the reaches of
`spelling_evidence` were chosen by cross-validation inside these two thirds.
"""

import sys
from collections.abc import Iterator, Sequence
from dataclasses import asdict

import numpy as np
from bench.corpora import Piece
from bench.spelling import distinct_chorales, tunes_of_ryans
from numpy.typing import NDArray

from sitegen.harmony.spelling_evidence import outside_place, spelling_evidence
from sitegen.harmony.spelling_profile import WEIGHTS, SpellingProfile, motion_place

Numbers = NDArray[np.float64]
Examples = tuple[Numbers, Numbers]
"""Rows of evidence, and for each 1 for a sharp or 0 for a flat."""

# The rule in log-odds; it does not hold for the ♯4, which is sharp both ways.
_RULE = 4.0
_USUAL = (2 * _RULE, 0.0, 0.0, 0.0, 0.0)
# Shares are small numbers that need great weights, so they are held back less.
_RIDGE, _RIDGE_OF_SHARES = 4.0, 0.1
_SHARES = 24
_FIRST_SHARP = 6
_ENOUGH = 1e-6
_FOLDS = 5


def taught() -> SpellingProfile:
    """Return the weights that stand for what books teach, before any music is read."""
    motion = [0.0] * 9
    for before in (-1, 0, 1):
        for after in (-1, 1):
            motion[motion_place(before, after)] = _RULE * after
    steps, shares = (0.0,) * 5, (0.0,) * 12
    return SpellingProfile(_USUAL, tuple(motion), steps, steps, shares, shares)


def examples_of(pieces: Sequence[Piece]) -> Examples:
    """Return the evidence for all notes outside their signatures, and their names."""
    found = [example for piece in pieces for example in _examples_in(piece)]
    return np.array([evidence for evidence, _ in found]), np.array([float(s) for _, s in found])


def _examples_in(piece: Piece) -> Iterator[tuple[tuple[float, ...], bool]]:
    (signature,) = piece.signatures
    numbers = [pitch.midi for pitch, _ in piece.notes]
    for index, (pitch, _) in enumerate(piece.notes):
        outside = outside_place(pitch.midi, signature)
        # Further sharps and flats are slips of the pen; there is one in Ryan's.
        if outside is not None and abs(pitch.name.fifths - signature - outside) == _FIRST_SHARP:
            is_sharp = pitch.name.fifths > signature + outside
            yield spelling_evidence(numbers, index, outside).numbers, is_sharp


def estimate(examples: Examples) -> Numbers:
    """Return the weights that make the true names likeliest, held to what is taught.

    Newton's method, with a step halved until it gains.
    """
    evidence, is_sharp = examples
    mean = np.array(taught().numbers)
    ridge = np.full(len(mean), _RIDGE)
    ridge[-_SHARES:] = _RIDGE_OF_SHARES

    def loss(weights: Numbers) -> float:
        unlikely = np.logaddexp(0, np.where(is_sharp, -1, 1) * (evidence @ weights))
        return float(unlikely.sum() + (ridge * (weights - mean) ** 2).sum() / 2)

    weights, step = np.zeros(len(mean)), np.ones(len(mean))
    while np.abs(step).max() > _ENOUGH:
        beliefs = (1 + np.tanh(evidence @ weights / 2)) / 2
        gradient = evidence.T @ (beliefs - is_sharp) + ridge * (weights - mean)
        spread = (evidence.T * (beliefs * (1 - beliefs))) @ evidence + np.diag(ridge)
        step = np.linalg.solve(spread, gradient)
        while loss(weights - step) > loss(weights) and np.abs(step).max() > _ENOUGH:
            step = step / 2
        weights = weights - step
    return weights


def misses_across(pieces: Sequence[Piece]) -> int:
    """Return how many notes get a wrong name when every fifth of the pieces is asked in turn.

    Each note by itself, without the same note near by.
    """
    misses = 0
    for fold in range(_FOLDS):
        weights = estimate(examples_of([p for i, p in enumerate(pieces) if i % _FOLDS != fold]))
        evidence, is_sharp = examples_of(pieces[fold::_FOLDS])
        misses += int(((evidence @ weights > 0) != is_sharp).sum())
    return misses


def looked_at() -> list[Piece]:
    """Return the first two of every three pieces of both collections."""
    collections = (distinct_chorales(), tunes_of_ryans())
    return [p for pieces in collections for i, p in enumerate(pieces) if i % 3 != 2]


def profile_of(weights: Numbers) -> SpellingProfile:
    """Return the weights as they stand in the code, with one decimal."""
    left = iter([round(float(weight), 1) + 0.0 for weight in weights])
    rows = [tuple(next(left) for _ in row) for row in asdict(WEIGHTS).values()]
    return SpellingProfile(*rows)


def main(arguments: Sequence[str]) -> int:
    """Print the table, or compare it with the one in the code; return the exit status."""
    pieces = looked_at()
    examples = examples_of(pieces)
    profile = profile_of(estimate(examples))
    if "--check" in arguments:
        print("the table is the estimate" if profile == WEIGHTS else "the table differs")
        return int(profile != WEIGHTS)
    for name, row in asdict(profile).items():
        print(f"    {name}={row},")
    print(f"across {_FOLDS} folds: {misses_across(pieces)} wrong of {len(examples[1])}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
