"""Parts, numbers and shares as they stand in a sentence."""

from fractions import Fraction

from sitegen.score.chart import Part

_NUMBERS = "no one two three four five six seven eight nine ten eleven twelve".split()
_TIMES = ("never", "once", "twice")


def the_part(part: Part) -> str:
    """Return a part's name as it stands in a sentence: "the voice", "guitar 2"."""
    return part.name if part.name[-1:].isdigit() else f"the {part.name}"


def capitalised(words: str) -> str:
    """Return a sentence with its first letter large and the others as they are."""
    return words[:1].upper() + words[1:]


def number_word(count: int) -> str:
    """Return a number in words up to twelve, a larger one in figures."""
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def times_word(count: int) -> str:
    """Return how often something happens: "never", "once", "twice", "three times"."""
    return _TIMES[count] if count < len(_TIMES) else f"{number_word(count)} times"


def percent(share: Fraction) -> str:
    """Return a share in whole per cent, "43 %", halves rounded up as everybody does by hand."""
    return f"{(200 * share.numerator + share.denominator) // (2 * share.denominator)} %"
