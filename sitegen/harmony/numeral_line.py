"""Roman numerals of a progression, each chord read with the chords after it in view."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby

from sitegen.harmony.applied import Target
from sitegen.harmony.arguments import AnyChord, AnyKey, as_chord, as_key
from sitegen.harmony.augmented_sixths import name_augmented_sixth
from sitegen.harmony.figures import seventh_in_bass
from sitegen.harmony.goals import find_goals
from sitegen.harmony.numerals import write_numeral
from sitegen.harmony.resolution import find_answer
from sitegen.score.chord import Chord
from sitegen.score.key import Key


@dataclass(frozen=True)
class ChordFunction:
    """What a chord is in its progression.

    `target` is the degree that it is applied to, None for a chord of its own degree; `sixth`
    names an augmented sixth chord, "" for all others; `answer` is the chord that it leads to,
    the next one that acts with another root, None where the progression ends before one.
    """

    numeral: str
    target: Target | None
    sixth: str
    answer: Chord | None


def roman_line(chords: Sequence[AnyChord], key: AnyKey) -> tuple[str, ...]:
    """Return the numeral of every chord of a progression in one key; "" for N.C.

    As `roman`, but with the following chords in view, read across N.C.; a repeated chord
    keeps its numeral:

    - what is applied is decided by where it goes (see `sitegen.harmony.goals`): V/V or II,
      V7/IV or I7, V/iv or the Picardy I, ♭VII7 or V7/♭III; the ii of an applied V, ii7/IV; the
      tritone substitutes subV7 and subV7/ii;
    - It6, Fr43 and Ger65 open to V (see `sitegen.harmony.augmented_sixths`);
    - the cadential six-four is written I64, by its notes and not as a delayed V, and the
      Neapolitan ♭II6: those are names of function, which a numeral does not say.

    The last chord has no chord after it and is read as `roman` reads it. Modulating progressions
    are given one passage at a time. Raises ValueError for text that is no chord or no key.
    """
    functions = function_line(chords, key)
    return tuple(function.numeral if function else "" for function in functions)


def function_line(chords: Sequence[AnyChord], key: AnyKey) -> tuple[ChordFunction | None, ...]:
    """Return what every chord of a progression is in one key; None for N.C.

    It is what the numerals of `roman_line` are written from. Raises ValueError for text that is
    no chord or no key.
    """
    line = [as_chord(chord) for chord in chords]
    sounding = tuple(seventh_in_bass(chord) for chord in line if isinstance(chord, Chord))
    groups = [(chord, len(list(same))) for chord, same in groupby(sounding)]
    read = _read_line(tuple(chord for chord, _ in groups), as_key(key))
    functions = (found for found, (_, n) in zip(read, groups, strict=True) for _ in range(n))
    return tuple(next(functions) if isinstance(chord, Chord) else None for chord in line)


@lru_cache(maxsize=256)
def _read_line(line: tuple[Chord, ...], key: Key) -> tuple[ChordFunction, ...]:
    functions = []
    for place, target in enumerate(find_goals(line, key)):
        answer = find_answer(line[place], line[place + 1 :])
        sixth = name_augmented_sixth(line[place], answer, key)
        numeral = sixth or write_numeral(line[place], key, target)
        functions.append(ChordFunction(numeral, target, sixth, answer))
    return tuple(functions)
