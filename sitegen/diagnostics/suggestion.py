"""What the author may have meant by a word that is not known."""

from collections.abc import Iterable
from difflib import get_close_matches

LONGEST_WORD, MOST_KNOWN = 60, 200
"""Beyond these the search for the nearest word takes longer than its hint is worth."""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return a hint that names the known word nearest to `word`, or the few known words, or ""."""
    choices = sorted(set(known))
    if len(word) > LONGEST_WORD or len(choices) > MOST_KNOWN:
        return ""
    lowered = {choice.lower(): choice for choice in reversed(choices)}
    near = get_close_matches(word.lower(), lowered, n=1, cutoff=0.6)
    if near:
        return f'did you mean "{lowered[near[0]]}"?'
    few = 12
    if 0 < len(choices) <= few:
        return f"known are: {', '.join(choices)}"
    return ""
