"""Two progressions compared: the closest relation that holds between them."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from sitegen.harmony.progressions.alignment import (
    ANY_KEY,
    Nearness,
    align,
    nearest,
    nearest_within,
)
from sitegen.harmony.progressions.cores import core
from sitegen.harmony.progressions.likeness import (
    Holder,
    Likeness,
    LikenessKind,
    Loops,
    StepPair,
)
from sitegen.harmony.progressions.progression import Progression
from sitegen.harmony.progressions.relations import Relation, containments, equalities, row_of
from sitegen.harmony.progressions.rows import Step
from sitegen.harmony.progressions.substitution import chord_cost
from sitegen.harmony.root_motion import root_motion

Keys = Literal["any", "own"]
"""Whether progressions are compared in any key, or each by the numerals of its own."""

_WAYS = {"up": "higher", "down": "lower"}

FARTHEST_ALIKE = Fraction(3, 10)
"""The distance up to which progressions without a plainer relation are called alike.

Measured: of random rows of diatonic triads about 1 pair in 100 is as near where they have four
chords, and 1 in 500 where they have eight or twelve.
"""


def compare(first: Progression, second: Progression, keys: Keys = "any") -> Likeness:
    """Return how the second of two progressions looks beside the first.

    The closest relation that holds: the same, a rotation of a loop, one contained in the other,
    each in the same key rather than moved, and with its extensions rather than up to them; else
    alike within `FARTHEST_ALIKE`, or unlike. Loops are compared by one pass. Where two
    progressions have loops and other endings, their loops are compared before they are called
    alike. With `keys` "own" the tonic of one stands for that of the other, and where one has no
    key, each chord for itself. Progressions without chords are unlike all.
    """
    shifts = _allowed(first, second, keys)
    found = _find(first, second, shifts)
    if found is not None:
        return found
    a, b = first.reduced.line, second.reduced.line
    if not a or not b:
        return Likeness("unlike", Fraction(1))
    near = nearest(a, b, shifts)
    return Likeness("unlike", near.distance, near.shift)


def find_likeness(first: Progression, second: Progression) -> Likeness | None:
    """Return what `compare` does, in any key, and None for unlike ones: several times as fast.

    How far unlike ones are apart is not worked out.
    """
    return _find(first, second, ANY_KEY)


def _find(first: Progression, second: Progression, shifts: Sequence[int]) -> Likeness | None:
    a, b = first.reduced.line, second.reduced.line
    if not a or not b:
        return None
    relation = _best([*equalities(first, second), *containments(first, second)], shifts)
    if relation is None or (relation.holder and (relation.shift or not relation.with_extensions)):
        of_loops = _best(equalities(first.cell, second.cell), shifts)
        if of_loops is not None:
            distance = nearest(a, b, shifts).distance
            return _tell(first, second, of_loops, distance, of_loops=True)
    if relation is not None:
        return _tell(first, second, relation, nearest(a, b, shifts).distance)
    near = nearest_within(FARTHEST_ALIKE, a, b, shifts)
    return None if near is None else _align(first.reduced, second.reduced, near)


def substitution_distance(first: Progression, second: Progression, keys: Keys = "any") -> Fraction:
    """Return how far two progressions are apart in substitutions, 0 to 1; a metric.

    See `sitegen.harmony.progressions.alignment`. Loops count once, and durations do not count.
    """
    a, b = first.reduced.line, second.reduced.line
    return nearest(a, b, _allowed(first, second, keys)).distance


def _allowed(first: Progression, second: Progression, keys: Keys) -> tuple[int, ...]:
    if keys == "any":
        return ANY_KEY
    if first.key is None or second.key is None:
        return (0,)
    return ((second.key.tonic.pitch_class - first.key.tonic.pitch_class) % 12,)


def _best(relations: Iterable[Relation], shifts: Sequence[int]) -> Relation | None:
    allowed = (relation for relation in relations if relation.shift in shifts)
    return min(allowed, key=lambda relation: relation.rank, default=None)


def _kind(relation: Relation) -> LikenessKind:
    if relation.holder:
        return "contained"
    if relation.start:
        return "rotation"
    if not relation.with_extensions:
        return "same but for extensions"
    return "same in another key" if relation.shift else "same"


def _tell(
    first: Progression,
    second: Progression,
    relation: Relation,
    distance: Fraction,
    *,
    of_loops: bool = False,
) -> Likeness:
    pairs = _pairs(first, second, relation, of_loops=of_loops)
    return Likeness(
        _kind(relation),
        distance,
        relation.shift,
        _motion(pairs, relation.shift),
        0 if relation.holder else relation.start,
        with_extensions=relation.with_extensions,
        of_loops=of_loops,
        loops=_loops(first, second, of_loops=of_loops),
        holder=relation.holder,
        bars=_bars(pairs, relation.holder),
        pace=None if relation.holder else _pace(pairs),
        pairs=pairs,
    )


def _loops(first: Progression, second: Progression, *, of_loops: bool) -> Loops:
    """Return which of the two come round, where they do so all the time or that is spoken of."""
    one, other = (bool(p.loop and (p.loop.whole or of_loops)) for p in (first, second))
    if one and other:
        return "both"
    return "first" if one else "second" if other else ""


def _pairs(
    first: Progression, second: Progression, relation: Relation, *, of_loops: bool
) -> tuple[StepPair, ...]:
    """Return the steps beside each other, of a loop those of one pass."""
    shown = (first.cell, second.cell) if of_loops else (first, second)
    a, b = (
        _steps(p, relation, as_played=relation.holder == side)
        for p, side in zip(shown, ("first", "second"), strict=True)
    )
    if relation.holder == "second":
        b = b[relation.start :]
    else:
        a = a[relation.start :] + a[: relation.start]
    return tuple(
        StepPair(one, other, chord_cost(core(one.chord), core(other.chord), relation.shift))
        for one, other in zip(a, b, strict=False)
    )


def _steps(progression: Progression, relation: Relation, *, as_played: bool) -> tuple[Step, ...]:
    shown = progression if as_played else progression.reduced
    row = row_of(shown, with_extensions=relation.with_extensions)
    places = row.steps if as_played else row.reduced.steps
    return tuple(shown.steps[place] for place in places)


def _bars(pairs: Sequence[StepPair], holder: Holder) -> tuple[int, ...]:
    """Return the bars of the holder's run; none where a repeat lies inside it."""
    if not holder:
        return ()
    run = [pair.first if holder == "first" else pair.second for pair in pairs]
    bars = [(step.bar, step.last_bar) for step in run if step]
    first, last = bars[0][0], bars[-1][-1]
    rises = all(a[0] <= b[0] for a, b in pairwise(bars)) and first <= last
    return (first, last) if rises else ()


def _pace(pairs: Sequence[StepPair]) -> Fraction | None:
    """Return how many times as long all chords of the second last."""
    ratios = {p.second.duration / p.first.duration for p in pairs if p.first and p.second}
    return ratios.pop() if len(ratios) == 1 else None


def _align(first: Progression, second: Progression, near: Nearness) -> Likeness:
    a, b = (tuple(p.steps[place] for place in p.row.reduced.steps) for p in (first, second))
    pairs = tuple(
        StepPair(
            None if pair.first is None else a[pair.first],
            None if pair.second is None else b[pair.second],
            pair.cost,
        )
        for pair in align(first.line, second.line, near.shift)
    )
    return Likeness("alike", near.distance, near.shift, _motion(pairs, near.shift), pairs=pairs)


def _motion(pairs: Sequence[StepPair], shift: int) -> str:
    """Return how the second lies to the first: "a fourth higher", "" where not moved."""
    for pair in pairs:
        if shift and pair.first and pair.second:
            words = root_motion(pair.first.chord, pair.second.chord)
            if (
                pair.second.chord.root.pitch_class - pair.first.chord.root.pitch_class
            ) % 12 == shift:
                return _beside(words)
    return ""


def _beside(motion: str) -> str:
    way, _, interval = motion.partition(" ")
    if way not in _WAYS:
        return f"{motion} away"
    return f"{interval} {_WAYS[way]}"
