"""The sentence on a figure that comes back: where, and how much higher or lower.

Pitch is compared with the first statement.
"""

from sitegen.analysis.melody.figures import FEWEST_NOTES, Figure
from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.melody.wording import distance_words
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.spoken import spoken_count
from sitegen.analysis.wording import capitalised, number_word, the_part

_MANY = 3
_MOST_WAYS = 2


def recurrence_sentence(line: MelodicLine, figure: Figure) -> str:
    """Return the sentence, "" for a figure of three notes that comes only twice."""
    if figure.length == FEWEST_NOTES and len(figure.starts) < _MANY:
        return ""
    if _fills_every_bar(line, figure):
        name = capitalised(the_part(line.part))
        return f"{name} plays the figure of bar {line.notes[0].bar} in every bar."
    figure = _to_bar_line(line, figure)
    subject, several = _subject(line, figure)
    verb = "come" if several else "comes"
    return capitalised(f"{subject} {verb} back {_returns(line, figure)}.")


def _to_bar_line(line: MelodicLine, figure: Figure) -> Figure:
    """Return the figure without the notes past its last whole bar, where most of it is left.

    It has to start on the same beat each time, or the bar line would cut it in two places.
    """
    notes = figure.notes(0)
    last = notes[-1]
    if last + 1 == len(line) or line.bars[last + 1] != line.bars[last]:
        return figure
    kept = sum(line.bars[index] < line.bars[last] for index in notes)
    beats = {line.notes[start].beat for start in figure.starts}
    whole = len(beats) == 1 and kept >= FEWEST_NOTES and 2 * kept >= figure.length
    return Figure(kept, figure.starts) if whole else figure


def _fills_every_bar(line: MelodicLine, figure: Figure) -> bool:
    """Tell whether one figure, at one pitch, is all that three bars or more hold."""
    count = len(figure.starts)
    whole = count * figure.length == len(line) and count >= _MANY
    bars = {line.notes[start].bar for start in figure.starts}
    return whole and bars == {bar.number for bar in line.pulse.written} and _same(line, figure)


def _same(line: MelodicLine, figure: Figure) -> bool:
    pitches = {line.midi[start : start + figure.length] for start in figure.starts}
    return len(pitches) == 1


def _subject(line: MelodicLine, figure: Figure) -> tuple[str, bool]:
    """Return the first statement in words, and whether it is spoken of as several notes."""
    notes = figure.notes(0)
    first, last = notes[0], notes[-1]
    part = the_part(line.part)
    bar = line.notes[first].bar
    if first and line.notes[first - 1].bar == bar:
        count = spoken_count(line.notes[first].beat)
        return f"{part}'s figure from {count} in {bars_said([bar])}", False
    ends = last + 1 == len(line) or line.notes[last + 1].bar != line.notes[last].bar
    if ends and bar:
        return f"{part}'s figure of {_bars(line, notes)}", False
    if line.notes[last].bar == bar:
        number = number_word(figure.length)
        return f"{part}'s first {number} notes of {bars_said([bar])}", True
    return f"{part}'s figure that starts in {bars_said([bar])}", False


def _bars(line: MelodicLine, notes: range) -> str:
    return bars_said(line.notes[index].bar for index in notes)


def _returns(line: MelodicLine, figure: Figure) -> str:
    """Return where and how the later statements come: "in bar 2 a step lower"."""
    ways: dict[str, list[int]] = {}
    for statement in range(1, len(figure.starts)):
        ways.setdefault(_way(line, figure, statement), []).append(statement)
    if len(ways) > _MOST_WAYS:
        return f"{number_word(len(figure.starts) - 1)} times, at different pitches"
    said = [f"{_where(line, figure, found)}{way}" for way, found in ways.items()]
    return ", and ".join(said)


def _way(line: MelodicLine, figure: Figure, statement: int) -> str:
    """Return how a statement differs in pitch from the first one, "" where it does not."""
    first, other = figure.notes(0), figure.notes(statement)
    move = line.steps[other[0]] - line.steps[first[0]]
    if move:
        return f" {distance_words(move)} {'higher' if move > 0 else 'lower'}"
    pairs = zip(first, other, strict=True)
    same = all(line.midi[a] == line.midi[b] for a, b in pairs)
    return "" if same else " with other accidentals"


def _where(line: MelodicLine, figure: Figure, statements: list[int]) -> str:
    """Return the bars of some statements; the count too where the only one starts elsewhere."""
    beat = line.notes[figure.starts[0]].beat
    starts = [line.notes[figure.starts[statement]] for statement in statements]
    if len(starts) == 1 and starts[0].beat != beat:
        return f"from {spoken_count(starts[0].beat)} in {bars_said([starts[0].bar])}"
    if len({line.notes[index].bar for index in figure.notes(0)}) == 1:
        return f"in {bars_said(start.bar for start in starts)}"
    if len(starts) <= _MOST_WAYS:
        return listed(f"in {_bars(line, figure.notes(statement))}" for statement in statements)
    notes = [index for statement in statements for index in figure.notes(statement)]
    bars = bars_said(line.notes[index].bar for index in notes)
    return f"{number_word(len(starts))} times in {bars}"
