"""The key that a body of notes suggests."""

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from functools import cache, lru_cache
from itertools import chain, pairwise
from math import exp, sqrt
from operator import itemgetter, mul

from msgspec import Struct

from sitegen.harmony.key_profiles import PROFILES, DegreeWeights, KeyProfile
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

Weight = Fraction | int | float
Sounding = Sequence[tuple[Pitch | int, float]]
_Taking = Callable[[Sequence[float]], Sequence[float]]

# How many notes open and close a piece; shorter ones are all opening and all closing.
_FRAME = 12
# How sure the sums are: so much at most, and half of it after so many different pairs of notes.
# Estimated by maximum likelihood on stretches of 2, 4 and 8 bars and on whole pieces, two of every
# three, of the chorales, Ryan's and O'Neill's; `tests/bench/keys.py` prints the held-back third.
_MOST_CERTAIN = 1.25
_HALF_CERTAIN_PAIRS = 12
# Notes that end together stand a third or more apart.
_LEAST_CHORD_STEP = 3
# Key signatures from six flats to five sharps hold each of the twelve tonics of a mode once.
_FEWEST_FIFTHS = -6


class KeyFinding(Struct, frozen=True):
    """A key and its share of belief: `fit`, from 0 to 1; all the keys asked about share 1.

    The first finding's fit says how sure the answer is, the second names the runner-up.
    """

    key: Key
    fit: float


def find_key(
    notes: Iterable[tuple[Pitch | int, Weight]], modes: Sequence[str] = ("major", "minor")
) -> tuple[KeyFinding, ...]:
    """Return the twelve keys of every mode, the best fit first; nothing when nothing sounds.

    `notes` are pitches, or MIDI numbers, each with its duration (any unit), in order of time;
    notes that sound together stand one after the other, from low to high. Each key is weighed by
    the degrees that fill the piece, open it, close it and stand last in the bass, with the
    weights of `key_profiles`. The fits are the softmax of the sums, tempered by how much is
    heard (Guo et al., On Calibration of Modern Neural Networks, 2017; from memory): of answers
    with a fit of 0.8, some four in five are right, for two bars as for a whole tune. What is
    heard is counted by the different pairs of neighbouring notes, so that a loop played again is
    no surer. Spelled notes decide between enharmonic keys; MIDI numbers give signatures from six
    flats to five sharps. `modes` may name any of the seven modes; the weights of the other five
    are derived from major's and minor's. Fits are tempered for major and minor alone.
    """
    sounding = [(note, float(duration)) for note, duration in notes if duration > 0]
    if not sounding:
        return ()
    lowest = lowest_signature(note for note, _ in sounding)
    keys = _keys(tuple(modes), lowest)
    evidence = key_evidence(sounding)
    sums = beliefs(evidence, keys)
    certainty = _certainty(sounding)
    greatest = max(sums)
    shares = [exp(certainty * (belief - greatest)) for belief in sums]
    whole = sum(shares)
    findings = [KeyFinding(key, s / whole) for key, s in zip(keys, shares, strict=True)]
    return tuple(sorted(findings, key=lambda found: (-found.fit, abs(found.key.fifths))))


@lru_cache(maxsize=256)
def _keys(modes: tuple[str, ...], lowest: int) -> tuple[Key, ...]:
    """Return the keys of some modes with the twelve signatures from the lowest on."""
    return tuple(key_with(fifths, mode) for mode in modes for fifths in range(lowest, lowest + 12))


@lru_cache(maxsize=512)
def key_with(signature: int, mode: str) -> Key:
    """Return the key of a mode that has a signature."""
    natural = Key(PitchName.at_fifths(0), mode)
    return Key(PitchName.at_fifths(signature - natural.fifths), mode)


def lowest_signature(notes: Iterable[Pitch | int]) -> int:
    """Return the flattest of the twelve signatures around the notes' place among the fifths."""
    places = [note.name.fifths for note in notes if isinstance(note, Pitch)]
    return signature_around(sum(places), len(places))


def signature_around(places: int, count: int) -> int:
    """Return the flattest of the twelve signatures around `count` places among the fifths.

    `places` is their sum; without any, six flats.
    """
    # The scale of a signature is centred two fifths above its major tonic.
    return _FEWEST_FIFTHS + (round(places / count - 2) if count else 0)


def _certainty(sounding: Sounding) -> float:
    numbers = [(note if isinstance(note, int) else note.midi) % 12 for note, _ in sounding]
    pairs = 1 + len(set(pairwise(numbers)))
    return _MOST_CERTAIN * pairs / (pairs + _HALF_CERTAIN_PAIRS)


def key_evidence(sounding: Sounding) -> KeyProfile:
    """Return what the notes say, for pitch classes from C up in place of degrees.

    `sounding` is not empty and its durations are positive.
    """
    numbers = [(n if isinstance(n, int) else n.midi, duration) for n, duration in sounding]
    final = _final_bass(numbers) % 12
    return KeyProfile(
        # Roots keep one long note from outvoting the scale around it.
        body=tuple(sqrt(share) for share in _shares(numbers)),
        final=tuple(float(place == final) for place in range(12)),
        opening=_shares(numbers[:_FRAME]),
        closing=_shares(numbers[-_FRAME:]),
    )


def _shares(numbers: Sequence[tuple[int, float]]) -> tuple[float, ...]:
    durations = [0.0] * 12
    for number, duration in numbers:
        durations[number % 12] += duration
    return tuple(duration / sum(durations) for duration in durations)


def _final_bass(numbers: Sequence[tuple[int, float]]) -> int:
    """Return the lowest of the notes that end together: equally long, a third or more apart."""
    bass, length = numbers[-1]
    for number, duration in reversed(numbers[:-1]):
        apart = bass - number
        if duration != length or (apart != 0 and apart < _LEAST_CHORD_STEP):
            break
        bass = number
    return bass


def beliefs(evidence: KeyProfile, keys: Sequence[Key]) -> list[float]:
    """Return the sum of what the evidence speaks for each key."""
    rows = [row + row for row in _rows(evidence)]
    turned = [_heard([row[tonic : tonic + 12] for row in rows]) for tonic in range(12)]
    sums = []
    for key in keys:
        shares, their = turned[key.tonic.pitch_class]
        sums.append(sum(map(mul, shares, their(_weights(key.mode)))))
    return sums


def _heard(rows: Iterable[DegreeWeights]) -> tuple[list[float], _Taking]:
    """Return what is heard of some rows, and what takes its weights out of all of them.

    Most degrees are silent in most rows; each row has one that is heard.
    """
    shares = list(chain.from_iterable(rows))
    places = [place for place, share in enumerate(shares) if share]
    return [shares[place] for place in places], itemgetter(*places)


@cache
def _weights(mode: str) -> tuple[float, ...]:
    return tuple(chain.from_iterable(_rows(PROFILES[mode])))


def _rows(profile: KeyProfile) -> tuple[DegreeWeights, ...]:
    return profile.body, profile.final, profile.opening, profile.closing
