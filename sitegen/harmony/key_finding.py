"""The key that a body of notes suggests."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import exp, sqrt
from statistics import fmean

from sitegen.harmony.key_profiles import PROFILES, DegreeWeights, KeyProfile
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

Weight = Fraction | int | float
Sounding = Sequence[tuple[Pitch | int, float]]

# How many notes open and close a piece; shorter ones are all opening and all closing.
_FRAME = 12
# Notes that end together stand a third or more apart.
_LEAST_CHORD_STEP = 3
# Key signatures from six flats to five sharps hold each of the twelve tonics of a mode once.
_FEWEST_FIFTHS = -6


@dataclass(frozen=True)
class KeyFinding:
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
    the degrees that fill the piece, open it, close it and stand last in the bass, with the weights
    of `key_profiles`; the fits are the softmax of the sums. Spelled notes decide between
    enharmonic keys; MIDI numbers give signatures from six flats to five sharps. `modes` may name
    any of the seven modes; the weights of the other five are derived from major's and minor's. The
    weights come from whole tunes and hymns, so a loop of a few chords looks surer than it is.
    """
    sounding = [(note, float(duration)) for note, duration in notes if duration > 0]
    if not sounding:
        return ()
    lowest = _lowest_signature(sounding)
    keys = [_key_with(fifths, mode) for mode in modes for fifths in range(lowest, lowest + 12)]
    evidence = key_evidence(sounding)
    sums = [_belief(evidence, key) for key in keys]
    shares = [exp(belief - max(sums)) for belief in sums]
    findings = [KeyFinding(key, s / sum(shares)) for key, s in zip(keys, shares, strict=True)]
    return tuple(sorted(findings, key=lambda found: (-found.fit, abs(found.key.fifths))))


def _key_with(signature: int, mode: str) -> Key:
    natural = Key(PitchName.at_fifths(0), mode)
    return Key(PitchName.at_fifths(signature - natural.fifths), mode)


def _lowest_signature(sounding: Sounding) -> int:
    """Return the flattest of the twelve signatures around the notes' place among the fifths."""
    places = [n.name.fifths for n, _ in sounding if isinstance(n, Pitch)]
    if not places:
        return _FEWEST_FIFTHS
    # The scale of a signature is centred two fifths above its major tonic.
    return round(fmean(places) - 2) + _FEWEST_FIFTHS


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


def _belief(evidence: KeyProfile, key: Key) -> float:
    profile, tonic = PROFILES[key.mode], key.tonic.pitch_class
    return (
        _agreement(evidence.body, profile.body, tonic)
        + _agreement(evidence.final, profile.final, tonic)
        + _agreement(evidence.opening, profile.opening, tonic)
        + _agreement(evidence.closing, profile.closing, tonic)
    )


def _agreement(evidence: Sequence[float], weights: DegreeWeights, tonic: int) -> float:
    return sum(evidence[(tonic + place) % 12] * weights[place] for place in range(12))
