"""The keys that a body of music goes through, one stretch after the other."""

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Sequence
from fractions import Fraction
from functools import lru_cache
from math import exp, sqrt

from msgspec import Struct

from sitegen.harmony.key_finding import key_with, signature_around
from sitegen.harmony.local_key_profiles import BASS, CERTAINTY, CHANGE_COST, PRESENCE
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch

Time = Fraction | int | float
TimedNote = tuple[Pitch | int, Time, Time]
"""A pitch or MIDI number, its onset and its duration."""

_Beat = tuple[int, int]
_SILENCE: _Beat = (0, -1)
_KEYS = 24
# Floats are fast; what ends so little after a beat ends with it.
_TOUCH = 1e-6
_MODES = ("major", "minor")


class KeyStretch(Struct, frozen=True):
    """A stretch of time in one key: `fit`, from 0 to 1, is the belief in it there."""

    start: Fraction
    end: Fraction
    key: Key
    runner_up: Key
    fit: float


class _Span(Struct, frozen=True, gc=False):
    """A stretch as beats, from and before, and its key: above the first bass, 12 more in minor."""

    first: int
    end: int
    key: int


def find_key_changes(
    notes: Sequence[TimedNote],
    beats: Sequence[Fraction],
    shortest: int = 4,
    changes_at: Collection[int] | None = None,
    change_cost: float = CHANGE_COST,
) -> tuple[KeyStretch, ...]:
    """Return the stretches of time with their major or minor keys; nothing when nothing sounds.

    `beats` are the onsets of the beats, rising, and the end of the last one; a stretch has at
    least `shortest` of them, unless the whole has fewer, and begins at one of `changes_at`
    (indices of beats; any, when None). A beat speaks for a key by the degrees that sound in it and
    by its lowest note, with the weights of `local_key_profiles`, and every change costs the same
    `change_cost`; the cut of the time with the greatest sum is found by dynamic programming
    (Viterbi 1967), as in Temperley, Music and Probability, 2007, chapter 6 (both from memory).
    Chords count as their members. `fit` is the softmax of a stretch's
    own sums, tempered by its length.
    """
    heard = hear_beats(notes, beats)
    bass = next((low for classes, low in heard if classes), None)
    if bass is None:
        return ()
    sums = _running_sums([_count_from(bass, beat) for beat in heard])
    spans = _segment(sums, shortest, changes_at, change_cost)
    lowest = _lowest_signatures(notes, beats, spans)
    return tuple(
        _stretch(beats, sums, span, bass, signature)
        for span, signature in zip(spans, lowest, strict=True)
    )


def hear_beats(notes: Sequence[TimedNote], beats: Sequence[Fraction]) -> list[_Beat]:
    """Return for every beat the pitch classes that sound, as bits, and the lowest one."""
    starts = [float(beat) for beat in beats]
    classes, lowest = [0] * (len(beats) - 1), [1000] * (len(beats) - 1)
    for note, onset, duration in notes:
        number = note if isinstance(note, int) else note.midi
        start = float(onset)
        first = max(bisect_right(starts, start + _TOUCH) - 1, 0)
        last = min(bisect_left(starts, start + float(duration) - _TOUCH), len(classes))
        for beat in range(first, last):
            classes[beat] |= 1 << number % 12
            lowest[beat] = min(lowest[beat], number)
    return [(c, low % 12) if c else _SILENCE for c, low in zip(classes, lowest, strict=True)]


def _count_from(bass: int, beat: _Beat) -> _Beat:
    """Return a beat with its pitch classes counted from `bass`.

    Counted from the first bass, music in another key gives the same sums to the last digit, and
    keys that are equally good are chosen from in the same order.
    """
    classes, low = beat
    if not classes:
        return beat
    return (classes >> bass | classes << 12 - bass) & 0xFFF, (low - bass) % 12


def _running_sums(heard: Sequence[_Beat]) -> list[list[float]]:
    """Return for every key what all beats before each speak for it."""
    sums = [[0.0] * _KEYS]
    for beat in heard:
        spoken = _speak(*beat)
        sums.append([before + new for before, new in zip(sums[-1], spoken, strict=True)])
    return sums


@lru_cache(maxsize=4096)
def _speak(classes: int, bass: int) -> tuple[float, ...]:
    """Return what a beat speaks for each key."""
    sounding = [place for place in range(12) if classes >> place & 1]
    return tuple(
        sum([PRESENCE[mode][(place - tonic) % 12] for place in sounding])
        + (BASS[mode][(bass - tonic) % 12] if sounding else 0.0)
        for mode in _MODES
        for tonic in range(12)
    )


def _segment(
    sums: Sequence[Sequence[float]],
    shortest: int,
    changes_at: Collection[int] | None,
    change_cost: float,
) -> list[_Span]:
    """Return the best cut of all beats.

    `opened` holds for every key the best sum of a stretch in it that is long enough at `end`,
    less what was spoken for it before its first beat; `best` the best sum of all up to a beat.
    """
    count = len(sums) - 1
    shortest = min(max(shortest, 1), count)
    best: dict[int, tuple[float, _Span | None]] = {0: (change_cost, None)}
    opened: list[tuple[float, int]] = [(float("-inf"), 0)] * _KEYS
    for end in range(shortest, count + 1):
        first = end - shortest
        if first in best:
            gained = best[first][0] - change_cost
            opened = [
                old if old[0] >= gained - spoken else (gained - spoken, first)
                for old, spoken in zip(opened, sums[first], strict=True)
            ]
        if end == count or changes_at is None or end in changes_at:
            totals = [way[0] + spoken for way, spoken in zip(opened, sums[end], strict=True)]
            key = totals.index(max(totals))
            best[end] = totals[key], _Span(opened[key][1], end, key)
    return _trace(best, count)


def _trace(best: dict[int, tuple[float, _Span | None]], count: int) -> list[_Span]:
    spans: list[_Span] = []
    span = best[count][1]
    while span is not None:
        spans.append(span)
        span = best[span.first][1]
    return _join(spans[::-1])


def _join(spans: Sequence[_Span]) -> list[_Span]:
    """Return the spans with neighbours of one key joined."""
    joined: list[_Span] = []
    for span in spans:
        if joined and joined[-1].key == span.key:
            span = _Span(joined.pop().first, span.end, span.key)  # noqa: PLW2901 - it grows
        joined.append(span)
    return joined


def _lowest_signatures(
    notes: Sequence[TimedNote], beats: Sequence[Fraction], spans: Sequence[_Span]
) -> list[int]:
    """Return for each span the flattest of the signatures around the notes that start in it."""
    starts = [float(beats[span.first]) for span in spans]
    places, counts = [0] * len(spans), [0] * len(spans)
    for note, onset, _ in notes:
        if isinstance(note, Pitch):
            span = max(bisect_right(starts, onset + _TOUCH) - 1, 0)
            places[span] += note.name.fifths
            counts[span] += 1
    return list(map(signature_around, places, counts))


def _stretch(
    beats: Sequence[Fraction],
    sums: Sequence[Sequence[float]],
    span: _Span,
    bass: int,
    lowest: int,
) -> KeyStretch:
    """Return a span as a stretch of time, its key spelled among the signatures from `lowest`."""
    spoken = [
        after - before for after, before in zip(sums[span.end], sums[span.first], strict=True)
    ]
    certainty = CERTAINTY / sqrt(span.end - span.first)
    greatest = max(spoken)
    shares = [exp(certainty * (total - greatest)) for total in spoken]
    ranked = sorted(range(_KEYS), key=lambda key: (key != span.key, -shares[key]))
    key, runner_up = (_key(number, bass, lowest) for number in ranked[:2])
    return KeyStretch(
        beats[span.first], beats[span.end], key, runner_up, shares[span.key] / sum(shares)
    )


def _key(number: int, bass: int, lowest: int) -> Key:
    """Return the key so far above the first bass (12 more in minor), with one of 12 signatures."""
    minor, above = divmod(number, 12)
    tonic = (above + bass) % 12
    keys = (key_with(signature, _MODES[minor]) for signature in range(lowest, lowest + 12))
    return next(key for key in keys if key.tonic.pitch_class == tonic)
