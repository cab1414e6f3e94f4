"""How counts, shares and distances are said in a sentence."""

from sitegen.analysis.wording import number_word

_DISTANCES = ("", "step", "third", "fourth", "fifth", "sixth", "seventh", "octave", "ninth")
_OCTAVE = 7


def distance_words(steps: int) -> str:
    """Return how far staff steps carry, without a quality: "a step", "a sixth", "two octaves"."""
    size = abs(steps)
    octaves, rest = divmod(size, _OCTAVE)
    if size < len(_DISTANCES):
        return f"an {_DISTANCES[size]}" if size == _OCTAVE else f"a {_DISTANCES[size]}"
    whole = "an octave" if octaves == 1 else f"{number_word(octaves)} octaves"
    return f"{whole} and {distance_words(rest)}" if rest else whole
