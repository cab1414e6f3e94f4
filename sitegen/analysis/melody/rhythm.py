"""Bars of a line that share one rhythm.

The rhythm of a bar is where in it notes start, three or more; how long the last one is held is
free, and a bar of equal gaps all through is no rhythm to speak of. Bars count as sharing a rhythm
only where their pitches move differently in some of them: else a figure is repeated.
"""

from itertools import pairwise

from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import the_part

_FEWEST_NOTES = 3
_FEWEST_BARS = 3


def rhythm_facts(line: MelodicLine) -> list[Fact]:
    """Return the bars with the rhythm that most bars share."""
    bars = _bars(line)
    shared: dict[tuple[int, ...], list[range]] = {}
    for notes in bars:
        if len(notes) >= _FEWEST_NOTES and not _is_even(line, notes):
            shared.setdefault(line.offsets[notes.start : notes.stop], []).append(notes)
    alike = max(shared.values(), key=len, default=[])
    if len({line.moves[notes[0] : notes[-1]] for notes in alike}) < 2:  # noqa: PLR2004
        return []
    text = bars_said(line.notes[notes[0]].bar for notes in alike)
    sentence = ""
    if len(alike) >= _FEWEST_BARS and 2 * len(alike) >= len(bars) and not line.is_bass:
        sentence = f"{text[:1].upper()}{text[1:]} share one rhythm in {the_part(line.part)}."
    places = tuple(line.stretch(notes.start, notes.stop) for notes in alike)
    return [Fact(f"{line.prefix}.shared-rhythm", text, text, "", places, sentence)]


def _bars(line: MelodicLine) -> list[range]:
    """Return the notes that start in each written bar with any."""
    changes = [index + 1 for index, (a, b) in enumerate(pairwise(line.bars)) if a != b]
    return [range(a, b) for a, b in pairwise([0, *changes, len(line)])]


def _is_even(line: MelodicLine, notes: range) -> bool:
    """Tell whether a bar is cut into equal gaps from its start to its end."""
    starts = line.offsets[notes.start : notes.stop]
    bar = line.bars[notes[0]]
    end = line.pulse.bars[bar + 1] - line.pulse.bars[bar] + line.pulse.skips[bar]
    edges = (0, *starts, end) if starts[0] else (*starts, end)
    return len({b - a for a, b in pairwise(edges)}) == 1
