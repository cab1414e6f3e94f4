"""How counts, shares and distances are said in a sentence."""

from fractions import Fraction

_NUMBERS = "no one two three four five six seven eight nine ten eleven twelve".split()
_DISTANCES = ("", "step", "third", "fourth", "fifth", "sixth", "seventh", "octave", "ninth")
_OCTAVE = 7


def number_word(count: int) -> str:
    """Return a number in words up to twelve."""
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def percent(share: Fraction) -> str:
    """Return a share as it is printed, "42 %", rounded as `round` does."""
    whole, rest = divmod(100 * share.numerator, share.denominator)
    up = 2 * rest > share.denominator or (2 * rest == share.denominator and whole % 2)
    return f"{whole + 1 if up else whole} %"


def distance_words(steps: int) -> str:
    """Return how far staff steps carry, without a quality: "a step", "a sixth", "two octaves"."""
    size = abs(steps)
    octaves, rest = divmod(size, _OCTAVE)
    if size < len(_DISTANCES):
        return f"an {_DISTANCES[size]}" if size == _OCTAVE else f"a {_DISTANCES[size]}"
    whole = "an octave" if octaves == 1 else f"{number_word(octaves)} octaves"
    return f"{whole} and {distance_words(rest)}" if rest else whole
