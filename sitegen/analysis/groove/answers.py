"""Call and response: a part that plays only while the voice rests.

Told only where nothing speaks against it: every note of the part starts while the voice rests,
and two times or more a call of the voice is followed by at least two onsets of the part. This
reading is ours; call and response is the trade's term.
"""

from itertools import groupby

from sitegen.analysis.groove.grid import to_ticks
from sitegen.analysis.groove.line import Line
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised

_FEWEST_TURNS = 2
_FEWEST_ONSETS = 2


def answer_facts(voice: Line, line: Line) -> list[Fact]:
    """Return how often `line` answers `voice`, if it does nothing else."""
    answers = _answers(voice, line)
    if len(answers) < _FEWEST_TURNS:
        return []
    places = line.places(turn[0] for turn in answers)
    bars = bars_said(places)
    sentence = f"{capitalised(line.name)} answers {voice.name} in its rests, in {bars}."
    count = len(answers)
    return [Fact(f"{line.prefix}.answers", count, str(count), "answers", places, sentence)]


def _answers(voice: Line, line: Line) -> list[list[int]]:
    """Return the ticks of each answer in turn, none where the part also plays otherwise."""
    if any(tick in voice.struck for tick in line.struck):
        return []
    heard = sorted([*((tick, False) for tick in voice.struck), *((t, True) for t in line.struck)])
    turns: list[list[int]] = []
    sings_until = 0
    for answers, run in groupby(heard, key=lambda onset: onset[1]):
        ticks = [tick for tick, _ in run]
        if not answers:
            sings_until = _end(voice, ticks[-1])
        elif ticks[0] < sings_until:
            return []
        elif sings_until and len(ticks) >= _FEWEST_ONSETS:
            turns.append(ticks)
    return turns


def _end(line: Line, tick: int) -> int:
    ticks = line.grid.ticks
    return tick + max(to_ticks(note.duration, ticks) for note in line.struck[tick])
