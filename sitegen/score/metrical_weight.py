"""Metrical weight: how strong a place of a bar is, from the meter alone.

The weights are those of H. C. Longuet-Higgins and C. S. Lee, "The Rhythmic Interpretation of
Monophonic Music", Music Perception 1 (1984), from memory: the downbeat weighs 0, and a place
that appears first at the n-th division of the bar weighs -n. The divisions are the regular
levels of F. Lerdahl and R. Jackendoff, *A Generative Theory of Tonal Music* (1983), chapter 4,
from memory: 4/4 falls into halves, quarters, eighths, ... (0 -3 -2 -3 -1 -3 -2 -3 in eighths),
3/4 and 6/8 into three and two beats. Meters of unlike groups are not theirs: here every group
starts one level under the downbeat, so that 7/8 as 2+2+3 weighs 0 -2 -1 -2 -1 -2 -2.
"""

from fractions import Fraction
from functools import lru_cache
from itertools import accumulate

from sitegen.score.meter import Meter

_COMPOUND = 3
_QUARTER = 4


@lru_cache(maxsize=4096)
def metrical_weight(meter: Meter, position: Fraction) -> int:
    """Return the weight of a place in a bar: 0 for the downbeat, -1, -2, ... for weaker ones.

    `position` is in quarter notes from where the meter's bar starts, so that a pickup's place
    is `onset - bar.start + bar.skipped`; places past the bar's end start over. A place
    between two counts lies one level down for every division that reaches it: 1/2, 1/3 and
    1/5 of a count one level, 1/4 and 1/6 two.
    """
    weights = _count_weights(meter)
    count, rest = divmod(position / meter.beat, 1)
    if rest == 0:
        return weights[count % meter.count]
    return min(weights) - _divisions(rest.denominator)


@lru_cache(maxsize=256)
def beat_level(meter: Meter) -> int:
    """Return the weight of the weakest beats of a bar; whatever weighs less is off the beat.

    Beats are the counts of a meter in quarters or longer, and the groups of a compound meter
    and of one in eighths or shorter: 6/8 has two beats, 7/8 as 2+2+3 three. A beat is strong
    when it is the downbeat or weighs more than this: 1 and 3 in 4/4, 1 in 2/4, 3/4 and 6/8,
    1 and 4 in 5/4 as 3+2.
    """
    weights = _count_weights(meter)
    if meter.is_compound or (meter.unit > _QUARTER and max(meter.groups) > 1):
        starts = accumulate(meter.groups[:-1], initial=0)
        return min(weights[start] for start in starts)
    return min(weights)


@lru_cache(maxsize=256)
def _count_weights(meter: Meter) -> tuple[int, ...]:
    """Return the weight of each count of a bar, in order."""
    heads = _depths(meter.groups)
    insides = [_depths((1,) * group) for group in meter.groups]
    group_level, count_level = max(heads), max(map(max, insides))
    weights: list[int] = []
    for head, inside in zip(heads, insides, strict=True):
        # Counts of the weakest kind stand on one level in all groups, long or short.
        sunk = group_level + count_level - max(inside)
        weights += (-head, *(-sunk - depth for depth in inside[1:]))
    return tuple(weights)


def _depths(sizes: tuple[int, ...]) -> tuple[int, ...]:
    """Return at which division each of some neighbours starts, 0 for the first.

    An even number of equal neighbours falls into halves, everything else into its members.
    """
    count = len(sizes)
    if count == 1:
        return (0,)
    half = count // 2
    if count % 2 or len(set(sizes)) > 1:
        return (0,) + (1,) * (count - 1)
    inner = _depths(sizes[:half])
    lowered = tuple(depth + 1 if depth else 0 for depth in inner)
    return (*lowered, 1, *lowered[1:])


def _divisions(denominator: int) -> int:
    """Return how many divisions a fraction of a count takes: the prime factors, all counted."""
    found, prime = 0, 2
    while denominator > 1:
        if denominator % prime:
            prime += 1
        else:
            denominator //= prime
            found += 1
    return found
