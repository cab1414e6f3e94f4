"""Struck notes held until the next: onsets become events without gap or overlap."""

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from fractions import Fraction

from msgspec import Struct

from sitegen.score.chart import Event, Note
from sitegen.source import Span


class Struck(Struct, frozen=True):
    """What starts at an onset in one voice; no notes mean a rest.

    `latest` is where it ends at the latest.
    """

    onset: Fraction
    notes: tuple[Note, ...]
    span: Span
    latest: Fraction | None = None


Stretch = tuple[Fraction, Fraction]


def hold(
    struck: Iterable[Struck],
    written: Sequence[Stretch],
    cuts: Iterable[Fraction],
    end: Fraction,
) -> tuple[Event, ...]:
    """Return the voice from 0 to `end`: each note until the next, rests where nothing sounds.

    `written` are the stretches of time whose systems have this voice; a note stops where such
    a stretch ends without another following at once, at each onset of `cuts` (repeat signs)
    and at its own `latest`.
    """
    stops = sorted({*cuts, *_open_ends(written), end})
    by_onset = sorted(struck, key=lambda s: s.onset)
    onsets = [s.onset for s in by_onset]
    events: list[Event] = []
    at = Fraction(0)
    for index, current in enumerate(by_onset):
        if current.onset > at:
            events.append(_rest(at, current.onset, current.span))
        following = onsets[index + 1] if index + 1 < len(onsets) else end
        later = bisect_right(stops, current.onset)
        stop = stops[later] if later < len(stops) else end
        limits = [following, stop] + ([current.latest] if current.latest is not None else [])
        at = min(limits)
        events.append(Event(current.onset, at - current.onset, current.notes, current.span))
    if at < end:
        span = by_onset[-1].span if by_onset else Span(1, 1, 1, 1)
        events.append(_rest(at, end, span))
    return _join_rests(events)


def _open_ends(written: Sequence[Stretch]) -> set[Fraction]:
    starts = {start for start, _ in written}
    return {end for _, end in written if end not in starts}


def _rest(start: Fraction, end: Fraction, span: Span) -> Event:
    return Event(start, end - start, (), span)


def _join_rests(events: list[Event]) -> tuple[Event, ...]:
    joined: list[Event] = []
    for event in events:
        if joined and not event.notes and not joined[-1].notes:
            last = joined.pop()
            joined.append(Event(last.onset, event.end - last.onset, (), last.span))
        else:
            joined.append(event)
    return tuple(joined)
