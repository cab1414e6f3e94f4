"""Places in a chart as they are said: "bar 3", "bars 1, 3 and 5 to 8", "the pickup"."""

from collections.abc import Iterable
from itertools import pairwise

from sitegen.analysis.reading import Place

_FEWEST_IN_RUN = 3


def bars_said(places: Iterable[Place | int]) -> str:
    """Return the bars of some places, or bar numbers, in words; "" for none.

    Three bars or more in a row are a run; bar 0 is the pickup.
    """
    numbers = sorted({place if isinstance(place, int) else place.bar for place in places})
    counted = [number for number in numbers if number]
    word = "bar" if len(counted) == 1 else "bars"
    bars = f"{word} {listed(_runs(counted))}" if counted else ""
    return " and ".join(filter(None, ["the pickup" if 0 in numbers else "", bars]))


def listed(words: Iterable[str]) -> str:
    """Return words as a list in a sentence: "a", "a and b", "a, b and c"."""
    *most, last = [*words] or [""]
    return f"{', '.join(most)} and {last}" if most else last


def _runs(numbers: list[int]) -> list[str]:
    """Return sorted numbers with their runs drawn together: 1 2 3 5 6 is `1 to 3`, `5`, `6`."""
    if not numbers:
        return []
    breaks = [at for at, (a, b) in enumerate(pairwise(numbers), start=1) if b != a + 1]
    runs: list[str] = []
    for start, end in pairwise([0, *breaks, len(numbers)]):
        run = numbers[start:end]
        long = len(run) >= _FEWEST_IN_RUN
        runs += [f"{run[0]} to {run[-1]}"] if long else map(str, run)
    return runs
