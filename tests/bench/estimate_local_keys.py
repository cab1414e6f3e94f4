"""Estimate the weights of `local_key_profiles` again.

Run `PYTHONPATH=tests python -m bench.estimate_local_keys`; it takes some ten minutes. A linear-
chain conditional random field (Lafferty, McCallum and Pereira 2001) with one cost for every change
of key, by Adam descent, on the first two of every three pieces; chorales as notes, chorales as
chords and madrigals as chords count alike. The change cost that it prints is not the one in use:
see there.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from bench.local_keys import LocalKeys, chorale_notes, chords_of
from numpy.typing import NDArray

from sitegen.harmony.key_changes import hear_beats

Numbers = NDArray[np.float64]
_ROWS = 24
_KEYS = 24
_STEPS, _RATE, _RIDGE = 60, 0.25, 1e-3


class Example(NamedTuple):
    """A piece: its evidence by beat, key and weight; the true key of each beat; its weight."""

    evidence: Numbers
    truths: NDArray[np.int64]
    share: float


def estimate(examples: Sequence[Example]) -> Numbers:
    """Return the weights, degrees then basses of major and of minor, and the change cost."""
    weights = np.append(np.zeros(2 * _ROWS), 3.0)
    slope, square = np.zeros(weights.size), np.zeros(weights.size)
    for step in range(1, _STEPS + 1):
        gradient = sum((_gradient(weights, example) for example in examples), np.zeros(1))
        gradient[:-1] += _RIDGE * weights[:-1]
        slope = 0.9 * slope + 0.1 * gradient
        square = 0.99 * square + 0.01 * gradient**2
        root = np.sqrt(square / (1 - 0.99**step)) + 1e-9
        weights = weights - _RATE * slope / (1 - 0.9**step) / root
    return weights


def _gradient(weights: Numbers, example: Example) -> Numbers:
    evidence, truths, share = example
    beliefs, stays = _forward_backward(evidence @ weights[:-1], weights[-1])
    expected = np.einsum("nk,nkd->d", beliefs, evidence)
    seen = evidence[np.arange(len(truths)), truths].sum(axis=0)
    changes = (truths[1:] != truths[:-1]).sum() - (len(truths) - 1 - stays)
    return share * np.append(expected - seen, changes)


def _forward_backward(sums: Numbers, cost: float) -> tuple[Numbers, float]:
    """Return the belief in each key at each beat, and how many beats are expected to stay."""
    spoken = np.exp(sums - sums.max(axis=1, keepdims=True))
    step = np.full((_KEYS, _KEYS), np.exp(-cost))
    np.fill_diagonal(step, 1)
    forward, backward, scale = np.zeros_like(sums), np.ones_like(sums), np.ones(len(sums))
    reached = spoken[0]
    for beat in range(len(sums)):
        reached = (forward[beat - 1] @ step) * spoken[beat] if beat else reached
        scale[beat] = reached.sum()
        forward[beat] = reached / scale[beat]
    for beat in range(len(sums) - 2, -1, -1):
        backward[beat] = step @ (spoken[beat + 1] * backward[beat + 1]) / scale[beat + 1]
    stays = (forward[:-1] * spoken[1:] * backward[1:] / scale[1:, None]).sum()
    beliefs = forward * backward
    return beliefs / beliefs.sum(axis=1, keepdims=True), float(stays)


def _examples(pieces: Sequence[LocalKeys]) -> list[Example]:
    beats = sum(len(piece.keys) for piece in pieces)
    return [
        Example(
            np.array([_evidence(*beat) for beat in hear_beats(piece.notes, piece.beats)]),
            np.array([tonic + 12 * (mode == "minor") for tonic, mode in piece.keys]),
            1 / beats,
        )
        for piece in pieces
    ]


def _evidence(classes: int, bass: int) -> Numbers:
    """Return what sounds in a beat as each key's degrees, then its bass, major then minor."""
    sounding = np.array([float(classes >> place & 1) for place in range(12)])
    lowest = np.array([float(classes > 0 and place == bass) for place in range(12)])
    turned = [np.append(np.roll(sounding, -t), np.roll(lowest, -t)) for t in range(12)]
    nothing = np.zeros(_ROWS)
    return np.array(
        [np.append(turn, nothing) for turn in turned]
        + [np.append(nothing, turn) for turn in turned]
    )


def main() -> None:
    """Print the weights as they stand in `local_key_profiles`."""
    collections = (chorale_notes(), chords_of("bach/choraleAnalyses"), chords_of("monteverdi"))
    seen = [[piece for piece in pieces if not piece.is_held_back] for pieces in collections]
    weights = estimate([example for pieces in seen for example in _examples(pieces)])
    for mode, rows in zip(("major", "minor"), weights[:-1].reshape(2, 2, 12), strict=True):
        for name, row in zip(("presence", "bass"), rows, strict=True):
            print(mode, name, tuple(float(round(weight, 2)) for weight in row))
    print("change cost", round(float(weights[-1]), 2))


if __name__ == "__main__":
    main()
