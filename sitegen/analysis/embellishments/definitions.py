"""What a non-chord tone does: the textbook's definitions, each met exactly or not named.

After Stefan Kostka and Dorothy Payne, *Tonal Harmony* (chapters "Non-Chord Tones 1" and "2"),
with Edward Aldwell and Carl Schachter, *Harmony and Voice Leading*, where they differ; both
from memory. A step is one or two semitones, a leap is more; "accented" is metrically stronger
than the tone that follows (`sitegen.score.metrical_weight`). A tone here is a pitch over one
chord, struck once or more often, so a tie and a repeated note count alike.

- passing: by step from a chord tone and on by step in the same direction to a chord tone; two
  and more in a row where together they fill the way from one chord tone to another.
- neighbour: by step from a chord tone and back by step to the same pitch, a chord tone again.
- double neighbour (Kostka and Payne: neighbor group): the two neighbours of a chord tone, one
  after the other, between that tone and its return.
- suspension: a chord tone (its preparation) that stays, held or struck again, into a new chord
  that does not hold it, no weaker there than its resolution down by step to a chord tone.
- retardation: the same, resolved up by step.
- pedal: a chord tone that stays while one chord or more without it pass, and is a chord tone
  again. Kostka and Payne have it in the bass "usually"; any part may have it here.
- anticipation: a tone of the next chord that comes too early: not accented, at most one beat
  long, and then held or struck again when its chord is there. It may start a phrase.
- appoggiatura: by leap, then by step in the other direction to a chord tone, accented. Kostka
  and Payne say "usually" of the accent and the direction; both are asked for here.
- escape: by step from a chord tone, then by leap in the other direction to a chord tone, not
  accented.
- incomplete neighbour (Aldwell and Schachter): joined by step to a chord tone on one side and
  by leap to the tone on the other, in the cases the two names before leave over.

A tone after a rest has no approach and before a rest no resolution, so there it has no name
(but for the anticipation). Ornamented resolutions are not read.
"""

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from sitegen.analysis.chord_grid import ChordGrid
from sitegen.analysis.embellishments.soundings import Sounding

NAMES = (
    "passing",
    "neighbour",
    "double neighbour",
    "suspension",
    "retardation",
    "pedal",
    "anticipation",
    "appoggiatura",
    "escape",
    "incomplete neighbour",
)
_STEP = 2


class Turn(NamedTuple):
    """A tone that is no chord tone between its neighbours.

    `into` and `out` are semitones, `accent` is how much stronger its place is than that of
    the tone after it.
    """

    before: Sounding
    after: Sounding
    into: int
    out: int
    accent: int

    @property
    def turns_back(self) -> bool:
        """True when the line leaves in the other direction than it came."""
        return self.into * self.out < 0


class Named(NamedTuple):
    """Some tones of a phrase, from place `first` to before `end`, with what they do."""

    name: str
    first: int
    end: int


def name_phrase(grid: ChordGrid, phrase: Sequence[Sounding]) -> Iterator[Named]:
    """Return what the non-chord tones of a phrase do, in order, those without a name left out.

    Tones that make one figure together, passing tones in a row or a double neighbour, are
    named together; a pedal holds every chord that it is foreign to.
    """
    at = 0
    while at < len(phrase):
        end = at
        while end < len(phrase) and phrase[end].stable is False:
            end += 1
        if end > at:
            yield from _name_run(grid, phrase, at, end)
        at = end + 1


def _name_run(
    grid: ChordGrid, phrase: Sequence[Sounding], first: int, end: int
) -> Iterator[Named]:
    """Name the foreign tones from `first` to before `end`, together or one by one."""
    if together := _name_together(phrase, first, end):
        yield Named(together, first, end)
        return
    for place in range(first, end):
        if name := _name_one(grid, phrase, place):
            yield Named(name, place, place + 1)


def _name_together(phrase: Sequence[Sounding], first: int, end: int) -> str:
    """Name a run by its way from the chord tone before it to the chord tone after it."""
    if not first or end == len(phrase):
        return ""
    if not (phrase[first - 1].stable and phrase[end].stable):
        return ""
    moves = [phrase[n].midi - phrase[n - 1].midi for n in range(first, end + 1)]
    if not any(moves):
        return "pedal"
    if all(0 < move <= _STEP for move in moves) or all(0 < -move <= _STEP for move in moves):
        return "passing"
    if sum(moves) == 0 and _is_step(moves[0]) and _is_step(moves[-1]):
        return _NEIGHBOURS.get(len(moves), "") if moves[0] * moves[1] < 0 else ""
    return ""


def _name_one(grid: ChordGrid, phrase: Sequence[Sounding], place: int) -> str:
    if place + 1 == len(phrase):
        return ""
    tone, after = phrase[place], phrase[place + 1]
    accent = grid.weight(tone.start) - grid.weight(after.start)
    if tone.midi == after.midi:
        early = after.stable and accent < 0
        return "anticipation" if early and _is_short(grid, tone) else ""
    if not place:
        return ""
    before = phrase[place - 1]
    turn = Turn(before, after, tone.midi - before.midi, after.midi - tone.midi, accent)
    return next((name for name, fits in _DEFINITIONS if fits(turn)), "")


def _is_step(move: int) -> bool:
    return 0 < abs(move) <= _STEP


def _is_short(grid: ChordGrid, tone: Sounding) -> bool:
    return grid.time(tone.end - tone.start) <= grid.beat(tone.start)


def _stays_and_resolves(turn: Turn) -> bool:
    prepared = turn.before.stable and not turn.into
    return bool(prepared and turn.after.stable and _is_step(turn.out) and turn.accent >= 0)


def _is_appoggiatura(turn: Turn) -> bool:
    return _leans(turn) and turn.turns_back and turn.accent > 0


def _is_escape(turn: Turn) -> bool:
    away = _leaves(turn) and turn.turns_back and turn.accent <= 0
    return bool(away and turn.after.stable)


def _leans(turn: Turn) -> bool:
    """Tell whether the tone is leapt to and moves by step to a chord tone."""
    return bool(turn.after.stable and _is_step(turn.out) and abs(turn.into) > _STEP)


def _leaves(turn: Turn) -> bool:
    """Tell whether the tone moves by step from a chord tone and is leapt from."""
    return bool(turn.before.stable and _is_step(turn.into) and abs(turn.out) > _STEP)


# Neighbours and double neighbours by how many moves there are until the chord tone is back.
_NEIGHBOURS = {2: "neighbour", 3: "double neighbour"}
# The first that fits gives the name.
_DEFINITIONS: tuple[tuple[str, Callable[[Turn], bool]], ...] = (
    ("suspension", lambda turn: _stays_and_resolves(turn) and turn.out < 0),
    ("retardation", lambda turn: _stays_and_resolves(turn) and turn.out > 0),
    ("appoggiatura", _is_appoggiatura),
    ("escape", _is_escape),
    ("incomplete neighbour", lambda turn: _leans(turn) or _leaves(turn)),
)
