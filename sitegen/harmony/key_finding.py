"""The key that a body of notes suggests."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from statistics import fmean

from sitegen.harmony.key_profiles import MAJOR_PROFILE, MINOR_PROFILE
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

Weight = Fraction | int | float

_PROFILES = {"major": MAJOR_PROFILE, "minor": MINOR_PROFILE}
# Key signatures from six flats to five sharps hold each of the twelve majors and minors once.
_FEWEST_FIFTHS = -6


@dataclass(frozen=True)
class KeyFinding:
    """A key and how well the notes fit it: `fit` is a correlation, from -1 to 1."""

    key: Key
    fit: float


def find_key(notes: Iterable[tuple[Pitch | int, Weight]]) -> tuple[KeyFinding, ...]:
    """Return all 24 major and minor keys, the best fit first; nothing when nothing sounds.

    `notes` are pitches, or MIDI numbers, each with its duration (any unit). The durations of the
    twelve pitch classes are correlated with the probe-tone profile of each key (Krumhansl, 1990,
    Cognitive Foundations of Musical Pitch, ch. 4). Spelled notes decide between enharmonic keys;
    MIDI numbers give signatures from six flats to five sharps.
    """
    sounding = [(note, float(duration)) for note, duration in notes if duration > 0]
    if not sounding:
        return ()
    durations = [0.0] * 12
    for note, duration in sounding:
        durations[_pitch_class(note)] += duration
    lowest = _lowest_signature(sounding)
    findings = [
        KeyFinding(key, _correlation(durations, _rotated(key)))
        for fifths in range(lowest, lowest + 12)
        for key in _keys_with(fifths)
    ]
    return tuple(sorted(findings, key=lambda found: (-found.fit, abs(found.key.fifths))))


def _pitch_class(note: Pitch | int) -> int:
    return note % 12 if isinstance(note, int) else note.name.pitch_class


def _keys_with(signature: int) -> tuple[Key, Key]:
    return (
        Key(PitchName.at_fifths(signature), "major"),
        Key(PitchName.at_fifths(signature + 3), "minor"),
    )


def _lowest_signature(sounding: Sequence[tuple[Pitch | int, float]]) -> int:
    """Return the flattest of the twelve signatures around the notes' place among the fifths."""
    places = [n.name.fifths for n, _ in sounding if isinstance(n, Pitch)]
    if not places:
        return _FEWEST_FIFTHS
    # The scale of a signature is centred two fifths above its major tonic.
    return round(fmean(places) - 2) + _FEWEST_FIFTHS


def _rotated(key: Key) -> tuple[float, ...]:
    profile = _PROFILES[key.mode]
    tonic = key.tonic.pitch_class
    return tuple(profile[(place - tonic) % 12] for place in range(12))


def _correlation(durations: Sequence[float], profile: Sequence[float]) -> float:
    """Return Pearson's correlation; 0 when all twelve notes sound equally long."""
    mean, expected = fmean(durations), fmean(profile)
    pairs = [(d - mean, p - expected) for d, p in zip(durations, profile, strict=True)]
    spread = (sum(d * d for d, _ in pairs) * sum(p * p for _, p in pairs)) ** 0.5
    return sum(d * p for d, p in pairs) / spread if spread else 0.0
