"""What a score has and a chart cannot hold: it is told, never passed over."""
# ruff: noqa: ANN401 - music21 has no types

from collections import defaultdict
from fractions import Fraction
from typing import Any

from music21 import bar, dynamics, expressions, note, repeat, spanner, tablature, tempo

from sitegen.scores.exact import exact
from sitegen.scores.found import FoundLoss

# By class; the first that fits tells, and None says that a chart holds it.
_WORDS: tuple[tuple[type, str | None], ...] = (
    (expressions.RehearsalMark, None),
    (expressions.TextExpression, "words of direction"),
    (tempo.TempoText, "words of direction"),
    (tempo.MetricModulation, "changes of the note that is counted"),
    (dynamics.Dynamic, "dynamics"),
    (dynamics.DynamicWedge, "swells"),
    (repeat.RepeatExpression, "jumps such as D.C."),
    (spanner.Slur, "slurs"),
    (spanner.Glissando, "slides"),
    (expressions.TremoloSpanner, "tremolos"),
    (expressions.TrillExtension, "ornaments"),
    (expressions.ArpeggioMarkSpanner, "broken chords"),
    (expressions.PedalMark, "pedal marks"),
    (tablature.FretBoard, "chord frames"),
)
_MOST_PLACES = 2000


class Losses:
    """What is lost and where, while a score is looked through."""

    def __init__(self) -> None:
        self._onsets: defaultdict[str, set[Fraction]] = defaultdict(set)

    def add(self, what: str, onset: Fraction | None = None) -> None:
        """Note that `what` is lost at `onset`, or somewhere."""
        onsets = self._onsets[what]
        if onset is not None and len(onsets) < _MOST_PLACES:
            onsets.add(onset)

    def all(self) -> tuple[FoundLoss, ...]:
        """Return what is lost, in order of its words."""
        return tuple(
            FoundLoss(what, tuple(map(str, sorted(onsets))))
            for what, onsets in sorted(self._onsets.items())
        )


def note_losses(part: Any, losses: Losses) -> None:
    """Note what stands beside the notes of a part: dynamics, slurs, jumps, words, and so on."""
    for one in part.recurse():
        what = next((words for kind, words in _WORDS if isinstance(one, kind)), None)
        if what is not None:
            losses.add(what, _onset(one, part))
        if isinstance(one, bar.Repeat) and one.times not in {None, 0, 1, 2}:
            losses.add("repeats played more than twice", _onset(one, part))
    for measure in part.getElementsByClass("Measure"):
        for line in (measure.leftBarline, measure.rightBarline):
            if isinstance(line, bar.Repeat) and line.times not in {None, 0, 1, 2}:
                losses.add("repeats played more than twice", exact(measure.offset))


def _onset(one: Any, part: Any) -> Fraction | None:
    """Return where an element stands; a spanner stands where its first note does."""
    if isinstance(one, spanner.Spanner):
        one = next(iter(one.getSpannedElements()), None)  # type: ignore[no-untyped-call]
    if one is None:
        return None
    try:
        return exact(one.getOffsetInHierarchy(part))
    except Exception:  # noqa: BLE001 - it is somewhere; music21 raises its own for a lost note
        return None


def is_unpitched(one: Any) -> bool:
    """Return whether a note is one of percussion, without a pitch."""
    return isinstance(one, note.Unpitched) or not getattr(one, "pitches", ())
