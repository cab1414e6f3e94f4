"""The shape of a line and of its phrases: contour types and the Parsons code.

Contour types: D. Huron, "The Melodic Arch in Western Folksongs", Computing in Musicology 10,
1996, compares the first pitch, the mean of the pitches between, and the last one, which gives
nine types (from memory). Every note counts once, whatever its length. Readings differ on when
two of the three are level; here, when they lie less than half a semitone apart, that is, when
the mean rounds to the end's pitch. Two ends are level when they are the same pitch.

Parsons code: D. Parsons, "The Directory of Tunes and Musical Themes", 1975: an asterisk for the
first note, then u (up), d (down) or r (repeat) for each next one. The directory stops after
sixteen notes; here the whole line is coded, over rests as well.
"""

from collections.abc import Sequence
from itertools import pairwise

from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.melody.phrases import Phrase
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import number_word, the_part

_TYPES = {
    (1, -1): "convex",
    (-1, 1): "concave",
    (1, 1): "ascending",
    (-1, -1): "descending",
    (0, 0): "horizontal",
    (0, 1): "horizontal-ascending",
    (0, -1): "horizontal-descending",
    (1, 0): "ascending-horizontal",
    (-1, 0): "descending-horizontal",
}
_VERBS = {
    "convex": "rise and fall back",
    "concave": "dip and come back up",
    "ascending": "climb",
    "descending": "fall",
}
_FEWEST_NOTES = 3
_FEWEST_PHRASES = 3
_MOST_LETTERS = 64


def contour_type(midi: Sequence[int]) -> str:
    """Return Huron's type of three notes or more; "" for fewer."""
    between = len(midi) - 2
    if between < 1:
        return ""
    mean = sum(midi[1:-1])
    rise = _sign(2 * (mean - midi[0] * between), between)
    return _TYPES[rise, _sign(2 * (midi[-1] * between - mean), between)]


def _sign(doubled: int, level: int) -> int:
    """Return 0 for less than half a semitone, else the direction."""
    return 0 if abs(doubled) < level else 1 if doubled > 0 else -1


def parsons_code(midi: Sequence[int]) -> str:
    """Return the code of sounding numbers: `*rururddrdrdrd`."""
    letters = (
        "r" if after == pitch else "u" if after > pitch else "d" for pitch, after in pairwise(midi)
    )
    return f"*{''.join(letters)}"


def contour_facts(line: MelodicLine, phrases: tuple[Phrase, ...]) -> list[Fact]:
    """Return the code of the line, its shape and those of its phrases."""
    if len(line) < _FEWEST_NOTES:
        return []
    code = parsons_code(line.midi)
    short = code if len(code) <= _MOST_LETTERS else f"{code[:_MOST_LETTERS]}…"
    facts = [Fact(f"{line.prefix}.parsons", code, short)]
    shape = contour_type(line.midi)
    ends = line.places((0, len(line) - 1))
    facts.append(Fact(f"{line.prefix}.contour", shape, shape, "", ends))
    shaped = [phrase for phrase in phrases if len(phrase) >= _FEWEST_NOTES]
    if len(shaped) > 1:
        facts.append(_phrase_fact(line, shaped, all_phrases=len(shaped) == len(phrases)))
    return facts


def _phrase_fact(line: MelodicLine, shaped: list[Phrase], *, all_phrases: bool) -> Fact:
    types = [contour_type(line.midi[phrase.start : phrase.stop]) for phrase in shaped]
    text = ", ".join(f"{types.count(kind)} {kind}" for kind in dict.fromkeys(types))
    places = line.places(phrase[0] for phrase in shaped)
    sentence = ""
    alike = len({*types}) == 1 and len(types) >= _FEWEST_PHRASES and types[0] in _VERBS
    if alike and all_phrases and not line.is_bass:
        count, name = number_word(len(types)), the_part(line.part)
        sentence = f"All {count} phrases of {name} {_VERBS[types[0]]}."
    return Fact(f"{line.prefix}.phrase-contours", text, text, "", places, sentence)
