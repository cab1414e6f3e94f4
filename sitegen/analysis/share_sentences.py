"""What is telling about a part's notes over its chords, in a musician's words.

Told of a melodic line only: of a bass, or of stacked chords, most of it is true by trade.
"""

from collections import Counter
from collections.abc import Sequence

from sitegen.analysis.standing import LONG, OFF, STRONG, WEAK, Standing
from sitegen.analysis.wording import capitalised
from sitegen.score.role import Role

_FEWEST, _FEWEST_LONG, _FEWEST_IN_CONTRAST = 10, 3, 6
# Who has a tune by trade; for a guitar or keys to stay within the chords is nothing to tell.
_SINGING = {"voice", "lead", "horns", "winds", "strings"}
# How far apart the shares of chord tones must lie to be told, in hundredths.
_CONTRAST = 40


def tell_shares(standing: Standing) -> dict[str, str]:
    """Return sentences by the path, after the part, of the fact that they tell."""
    if not standing.is_melodic:
        return {}
    return {
        "chord-tone-share": _told_of_all(standing),
        f"chord-tone-share{STRONG}": _told_of_beats(standing),
        "root-share": _told_of_root(standing),
        "favourite-degree": _told_of_favourite(standing),
        f"chord-tone-share{LONG}": _told_of_long_notes(standing),
    }


def _told_of_all(standing: Standing) -> str:
    count = len(standing.notes)
    if count < _FEWEST:
        return ""
    sings = standing.part.instrument.family in _SINGING
    if sings and all(spell.role is Role.CHORD_TONE for spell in standing.spells):
        return f"All {count} notes of {standing.said} are chord tones."
    if not any(spell.role is Role.CHORD_TONE for spell in standing.spells):
        return f"Not one of the {count} notes of {standing.said} is a chord tone."
    return ""


def _told_of_beats(standing: Standing) -> str:
    strong = standing.groups[STRONG]
    others = standing.groups[WEAK] + standing.groups[OFF]
    if min(len(strong), len(others)) < _FEWEST_IN_CONTRAST:
        return ""
    here, there = (_chord_tones(standing, group) for group in (strong, others))
    if abs(here * len(others) - there * len(strong)) * 100 < _CONTRAST * len(strong) * len(others):
        return ""
    return (
        f"On strong beats {_of(here, len(strong))} notes of {standing.said} are chord tones,"
        f" elsewhere {_of(there, len(others))}."
    )


def _told_of_root(standing: Standing) -> str:
    if len(standing.notes) < _FEWEST or standing.meets_root:
        return ""
    verb = "sings" if standing.part.instrument.family == "voice" else "plays"
    return capitalised(f"{standing.said} never {verb} the root of a chord.")


def _told_of_favourite(standing: Standing) -> str:
    (degree, most), *_ = Counter(note.degree for note in standing.notes).most_common(1)
    count = len(standing.notes)
    if count < _FEWEST or most * 2 <= count or most == count:
        return ""
    found = _degree(degree)
    return f"{most} of the {count} notes of {standing.said} are the {found} of their chord."


def _told_of_long_notes(standing: Standing) -> str:
    long = standing.groups[LONG]
    if len(long) < _FEWEST_LONG:
        return ""
    degrees = {standing.notes[note].degree for note in long}
    if len(degrees) == 1:
        found = _degree(degrees.pop())
        return (
            f"All {len(long)} long notes of {standing.said} start as the {found} of their chord."
        )
    if not _chord_tones(standing, long):
        return f"None of the {len(long)} long notes of {standing.said} starts as a chord tone."
    return ""


def _chord_tones(standing: Standing, group: Sequence[int]) -> int:
    return sum(standing.notes[note].role is Role.CHORD_TONE for note in group)


def _of(count: int, whole: int) -> str:
    """Return a part of a whole in words: "all 8", "none of 8", "3 of 8"."""
    if count == whole:
        return f"all {whole}"
    return f"{count or 'none'} of {whole}"


def _degree(degree: str) -> str:
    return "root" if degree == "R" else degree
