"""Words whose letters run from right to left, within a line that runs from left to right."""

import re

# Hebrew, Arabic and their neighbours, with their presentation forms (Unicode Standard, 9).
_RUNS_LEFT = re.compile("[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]")


def isolated(text: str) -> str:
    """Return a name such that its direction orders no word or figure beside it.

    For plain text; on a page stands `<bdi>` (Unicode Bidirectional Algorithm, UAX #9, 2.4).
    """
    return f"\u2068{text}\u2069" if _RUNS_LEFT.search(text) else text
