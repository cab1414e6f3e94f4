"""Estimate the weights of `key_profiles` again, and how certain `find_key` may be.

Run `PYTHONPATH=tests python -m bench.estimate_profiles`; it reads for some ten minutes. A softmax
regression over the 24 major and minor keys, every collection with equal weight, on two of every
three of its pieces, whole and cut short; a small ridge holds back what few pieces say. The ridge
and the weight of what is cut short were chosen by cross-validation inside these two thirds and
by the analysed chorales.
"""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from bench.corpora import Piece, oneills_and_airds, ryans_mammoth
from bench.keys import Case, chorale_cases, excerpts, tune_cases
from numpy.typing import NDArray

from sitegen.harmony.key_finding import beliefs, key_evidence
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

Weights = NDArray[np.float64]
Example = tuple[Weights, int, float]

_ROWS = ("body", "final", "opening", "closing")
_RIDGE = 3e-5
_STEPS = 4000
# How much of a piece is left when it is cut short, in turn, and what that counts beside the whole.
_KEPT = (0.35, 0.5, 0.65)
_CUT_WEIGHT = 0.5
_MOST, _HALF = np.arange(0.5, 1.9, 0.05).tolist(), range(0, 41, 2)
KEYS = [
    Key(PitchName.at_fifths((7 * tonic + 5) % 12 - 5), mode)
    for mode in ("major", "minor")
    for tonic in range(12)
]
"""The keys by the pitch class of their tonic, major first."""


def estimate(examples: Sequence[Example]) -> Weights:
    """Return the weights that make the true keys of the examples likeliest (Adam descent).

    An example is its evidence for each of the 24 keys, the index of the true key, its own weight.
    """
    evidence = np.array([example[0] for example in examples])
    truths = np.eye(24)[[example[1] for example in examples]]
    shares = np.array([[example[2]] for example in examples])
    weights, slope, square = (np.zeros(evidence.shape[2]) for _ in range(3))
    for step in range(1, _STEPS + 1):
        sums = evidence @ weights
        beliefs = np.exp(sums - sums.max(axis=1, keepdims=True))
        beliefs /= beliefs.sum(axis=1, keepdims=True)
        errors = (beliefs - truths) * shares / shares.sum()
        gradient = np.tensordot(errors, evidence, axes=2) + _RIDGE * weights
        slope = 0.9 * slope + 0.1 * gradient
        square = 0.999 * square + 0.001 * gradient**2
        root = np.sqrt(square / (1 - 0.999**step)) + 1e-8
        weights = weights - 0.05 * slope / (1 - 0.9**step) / root
    return weights


def examples_of(cases: Sequence[Case]) -> list[Example]:
    """Return the first two of every three cases, whole and cut short, with equal weights.

    What is cut short ends anywhere: without it a last note on the dominant would weigh too much,
    above all since chorales that end so are no cases.
    """
    seen = [case for index, case in enumerate(cases) if index % 3 != 2]
    examples: list[Example] = []
    for index, (piece, key) in enumerate(seen):
        place = key.tonic.pitch_class + 12 * (key.mode == "minor")
        notes = len(piece.notes)
        kept = max(8, int(notes * _KEPT[index % 3]))
        examples.append((_evidence(piece, notes), place, 1 / len(seen)))
        examples.append((_evidence(piece, kept), place, _CUT_WEIGHT / len(seen)))
    return examples


def _evidence(piece: Piece, kept: int) -> Weights:
    """Return the first notes' evidence for each key: the rows of major, then those of minor."""
    evidence = key_evidence([(pitch.midi, float(length)) for pitch, length in piece.notes[:kept]])
    rows = np.array([getattr(evidence, row) for row in _ROWS])
    turned = [np.roll(rows, -tonic, axis=1).ravel() for tonic in range(12)]
    nothing = np.zeros(rows.size)
    return np.array(
        [np.concatenate([turn, nothing]) for turn in turned]
        + [np.concatenate([nothing, turn]) for turn in turned]
    )


def estimate_certainty(cases: Sequence[Case]) -> tuple[float, int]:
    """Return the greatest certainty and the pairs of half of it that make the truths likeliest.

    The excerpts are those of `bench.keys`, of the first two of every three cases.
    """
    seen = [case for index, case in enumerate(cases) if index % 3 != 2]
    sums, pairs, truths = [], [], []
    for notes, key in excerpts(seen):
        if notes:
            evidence = key_evidence([(number, float(length)) for number, length in notes])
            sums.append(beliefs(evidence, KEYS))
            pairs.append(1 + len(set(pairwise(number % 12 for number, _ in notes))))
            truths.append(key.tonic.pitch_class + 12 * (key.mode == "minor"))
    likelihoods = {
        (most, half): _likelihood(np.array(sums), np.array(truths), most * _rise(pairs, half))
        for most in _MOST
        for half in _HALF
    }
    return max(likelihoods, key=lambda way: likelihoods[way])


def _rise(pairs: Sequence[int], half: int) -> Weights:
    return np.array([count / (count + half) for count in pairs])


def _likelihood(sums: Weights, truths: NDArray[np.int64], certainty: Weights) -> float:
    tempered = sums * certainty[:, None]
    tempered -= tempered.max(axis=1, keepdims=True)
    logs = tempered - np.log(np.exp(tempered).sum(axis=1, keepdims=True))
    return float(logs[np.arange(len(truths)), truths].mean())


def main() -> None:
    """Print the weights as they stand in `key_profiles`."""
    oneills, airds = oneills_and_airds()
    collections = [chorale_cases(), *map(tune_cases, (ryans_mammoth(), oneills, airds))]
    examples = [example for cases in collections for example in examples_of(cases)]
    for mode, rows in zip(("major", "minor"), estimate(examples).reshape(2, 4, 12), strict=True):
        for name, row in zip(_ROWS, rows, strict=True):
            print(mode, name, tuple(float(round(weight, 1)) for weight in row))
    print("certainty", estimate_certainty([case for cases in collections[:3] for case in cases]))


if __name__ == "__main__":
    main()
