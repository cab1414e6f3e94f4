"""A form against the clock: where its sections start, and how the recording keeps its tempo.

A section of q quarter notes at n quarters a minute lasts 60 q / n seconds. Everything is exact;
stated times are whole seconds, so each may be off by one.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from sitegen.score.form import Form

ROUNDING = 1
"""How many seconds a stated time may be off: it is read from a display of whole seconds."""
WANDERING = Fraction(3, 100)
"""By which part of a tempo players may speed up or slow down before bars look miscounted."""


@dataclass(frozen=True)
class Stretch:
    """The sections `first` up to `last` (exclusive) between two stated times.

    `stated` are the seconds between them, `steady` what the bars last at the tempo, and
    `length` the quarter notes they hold.
    """

    first: int
    last: int
    stated: Fraction
    steady: Fraction
    length: Fraction

    @property
    def is_suspicious(self) -> bool:
        """True when neither whole seconds nor breathing players explain the difference."""
        return abs(self.stated - self.steady) > 2 * ROUNDING + WANDERING * self.steady

    def scaled(self, scale: Fraction) -> "Stretch":
        """Return the same stretch at a tempo that makes its bars last `scale` times as long."""
        return replace(self, steady=self.steady * scale)


@dataclass(frozen=True)
class FormClock:
    """Seconds of the recording for each section of a form.

    `starts` has one entry more than there are sections, the end of the last; it is empty where
    neither a tempo nor two times are given. `computed` counts on from the first stated time at
    the given tempo, and is empty without a tempo. `stretches` lie between stated times and are
    given with a tempo only; `quarters_per_minute` is the average over them, given by any two
    stated times.
    """

    starts: tuple[Fraction, ...] = ()
    computed: tuple[Fraction, ...] = ()
    stretches: tuple[Stretch, ...] = ()
    quarters_per_minute: Fraction | None = None


def clock_form(form: Form) -> FormClock:
    """Return the times of a form's sections; the form has one section at least.

    `starts` are the stated times, and between them the steady times stretched to fit.
    """
    stated = [n for n, section in enumerate(form.sections) if section.start_time is not None]
    average = _average(form, stated)
    lengths = _steady_lengths(form)
    if not lengths and average is None:
        return FormClock()
    anchor = stated[0] if stated else 0
    paced = lengths or [s.length * 60 / (average or 1) for s in form.sections]
    computed = _from_anchor(paced, anchor, Fraction(form.sections[anchor].start_time or 0))
    return FormClock(
        starts=_fitted(form, stated, computed),
        computed=computed if lengths else (),
        stretches=_stretches(form, stated, computed) if lengths else (),
        quarters_per_minute=average,
    )


def _steady_lengths(form: Form) -> list[Fraction]:
    """Return the seconds of each section at its tempo, nothing where one has no tempo."""
    lengths = [
        section.length * 60 / section.tempo.quarters_per_minute
        for section in form.sections
        if section.tempo is not None
    ]
    return lengths if len(lengths) == len(form.sections) else []


def _average(form: Form, stated: Sequence[int]) -> Fraction | None:
    """Return quarters a minute from the first to the last stated time, None without two."""
    if len(stated) < 2:  # noqa: PLR2004
        return None
    first, last = stated[0], stated[-1]
    length = sum((s.length for s in form.sections[first:last]), Fraction(0))
    return length * 60 / _between(form, first, last)


def _between(form: Form, first: int, last: int) -> Fraction:
    sections = form.sections
    return Fraction((sections[last].start_time or 0) - (sections[first].start_time or 0))


def _from_anchor(
    lengths: Sequence[Fraction], anchor: int, seconds: Fraction
) -> tuple[Fraction, ...]:
    """Return all starts and the last end when section `anchor` starts at `seconds`."""
    starts = [seconds - sum(lengths[:anchor])]
    for length in lengths:
        starts.append(starts[-1] + length)
    return tuple(starts)


def _stretches(
    form: Form, stated: Sequence[int], computed: Sequence[Fraction]
) -> tuple[Stretch, ...]:
    return tuple(
        Stretch(
            first,
            last,
            _between(form, first, last),
            computed[last] - computed[first],
            sum((s.length for s in form.sections[first:last]), Fraction(0)),
        )
        for first, last in pairwise(stated)
    )


def _fitted(
    form: Form, stated: Sequence[int], computed: Sequence[Fraction]
) -> tuple[Fraction, ...]:
    """Return the computed starts bent to pass through the stated times, none before 0:00."""
    anchors = {n: Fraction(form.sections[n].start_time or 0) for n in stated}
    anchors.setdefault(0, max(computed[0], Fraction(0)))
    end = len(form.sections)
    last = max(anchors)
    anchors[end] = anchors[last] + computed[end] - computed[last]
    if form.song_length is not None:
        anchors[end] = min(anchors[end], Fraction(form.song_length))
    starts = list(computed)
    for left, right in pairwise(sorted(anchors)):
        scale = (anchors[right] - anchors[left]) / (computed[right] - computed[left])
        for n in range(left, right + 1):
            starts[n] = anchors[left] + scale * (computed[n] - computed[left])
    return tuple(starts)
