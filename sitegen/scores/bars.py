"""The bars of a score: numbers, meters, what they hold, repeats and endings."""
# ruff: noqa: ANN401 - music21 has no types

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Any

from music21 import meter, spanner, stream

from sitegen.score.meter import MOST_BEATS, Meter
from sitegen.scores.exact import exact
from sitegen.scores.found import FoundBar
from sitegen.scores.losses import Losses
from sitegen.scores.unfit import UnfitScoreError

MOST_BARS = 2000
_HIGHEST = 9999
_MOST_ENDINGS = 9


@dataclass(frozen=True)
class _Span:
    """A measure with its time, what its meter holds, and the time of it that has passed."""

    measure: Any
    start: Fraction
    length: Fraction
    meter: str
    skipped: Fraction

    @property
    def goes_on(self) -> bool:
        return bool(self.skipped)


def find_bars(parts: Sequence[Any], losses: Losses, *, has_numbers: bool) -> list[FoundBar]:
    """Return the bars that all parts have; `has_numbers` says that the file numbers them.

    Raises UnfitScoreError where the parts have not the same, and where there are none or far too
    many.
    """
    part = max(parts, key=lambda one: len(one.getElementsByClass(stream.Measure)))
    measures = list(part.getElementsByClass(stream.Measure))
    if not measures:
        raise UnfitScoreError("it has no bars")
    if len(measures) > MOST_BARS:
        raise UnfitScoreError(f"it has more than {MOST_BARS} bars")
    starts = [exact(measure.offset) for measure in measures]
    for other in parts:
        own = [exact(measure.offset) for measure in other.getElementsByClass(stream.Measure)]
        if own != starts[: len(own)]:
            raise UnfitScoreError("the bars of its parts do not start together")
    spans = list(_spans(part, measures, starts, losses))
    numbers = _file_numbers(measures) if has_numbers else None
    brackets = _brackets(part, losses)
    if not has_numbers:  # nor does such a file say where a bracket closes
        brackets = {place: (ending, False) for place, (ending, _) in brackets.items()}
    return list(_make(spans, numbers or list(_counted(spans)), brackets))


def _spans(
    part: Any, measures: Sequence[Any], starts: Sequence[Fraction], losses: Losses
) -> Iterator[_Span]:
    current: Any = None
    before = Fraction(0)
    for place, (measure, start) in enumerate(zip(measures, starts, strict=True)):
        current = (
            measure.timeSignature or current or measure.getContextByClass(meter.TimeSignature)
        )
        written = _meter(current, measure)
        whole = written.length
        is_last = place + 1 == len(measures)
        length = (exact(part.highestTime) if is_last else starts[place + 1]) - start
        if is_last and (length <= 0 or not len(measure.notesAndRests) + len(measure.voices)):
            length = whole
        if length <= 0:
            raise UnfitScoreError(f"bar {measure.measureNumber} has no length")
        if length > whole:
            losses.add("a meter that is shorter than its bar", start)
            written = _longer(written, length, measure)
            whole = length
        is_split = bool(before) and before + length == whole
        skipped = whole - length if place == 0 else before if is_split else Fraction(0)
        yield _Span(measure, start, length, str(written), skipped)
        passed = skipped + length
        before = passed if passed < whole else Fraction(0)


def _meter(current: Any, measure: Any) -> Meter:
    text = current.ratioString if current is not None else "4/4"
    try:
        return Meter.read(text)
    except ValueError as wrong:
        raise UnfitScoreError(f"bar {measure.measureNumber}: {wrong}") from wrong


def _longer(written: Meter, length: Fraction, measure: Any) -> Meter:
    """Return the meter that a bar really has which holds more than is written."""
    count = length / written.beat
    if count.denominator > 1 or count > MOST_BEATS:
        raise UnfitScoreError(f"bar {measure.measureNumber} holds more than {written}")
    return Meter.read(f"{count}/{written.unit}")


def _file_numbers(measures: Sequence[Any]) -> list[int] | None:
    """Return the bars' numbers as the file has them, None where they do not go up."""
    numbers = [measure.number for measure in measures]
    pairs = pairwise(numbers)
    goes_up = all(before <= after <= before + 1 for before, after in pairs)
    return numbers if goes_up and numbers[0] >= 0 and numbers[-1] <= _HIGHEST else None


def _counted(spans: Sequence[_Span]) -> Iterator[int]:
    """Count as musicians do: a pickup is 0, the rest of a split bar has its bar's number."""
    number = 0
    for place, span in enumerate(spans):
        number += not span.goes_on
        yield 0 if place == 0 and span.goes_on else max(number, 1)


def _brackets(part: Any, losses: Losses) -> dict[int, tuple[str, bool]]:
    """Return by the id of a measure the text of a bracket that starts there, and if it closes."""
    found: dict[int, tuple[str, bool]] = {}
    for bracket in part.recurse().getElementsByClass(spanner.RepeatBracket):
        inside = sorted(bracket.getSpannedElements(), key=lambda one: float(one.offset))
        numbers = list(bracket.numberRange)
        if not inside or not numbers or not all(0 < n <= _MOST_ENDINGS for n in numbers):
            losses.add("endings with odd numbers")
            continue
        last = id(inside[-1])
        found[id(inside[0])] = (", ".join(f"{n}." for n in numbers), last == id(inside[0]))
        found.setdefault(last, ("", True))
    return found


def _make(
    spans: Sequence[_Span], numbers: Sequence[int], brackets: dict[int, tuple[str, bool]]
) -> Iterator[FoundBar]:
    for span, number in zip(spans, numbers, strict=True):
        measure = span.measure
        ending, closes = brackets.get(id(measure), ("", False))
        yield FoundBar(
            number,
            str(span.start),
            str(span.length),
            span.meter,
            str(span.skipped),
            getattr(measure.leftBarline, "direction", None) == "start",
            getattr(measure.rightBarline, "direction", None) == "end",
            getattr(measure.rightBarline, "type", None) == "double",
            ending,
            closes,
        )
