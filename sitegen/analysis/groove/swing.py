"""How beats are divided in two as they are written, and how a feel asks for them to be played.

The ratio is that of the two notes of a beat that holds one onset on it and one inside: 1:1
straight, 2:1 long and short of a triplet, 3:1 dotted. That swing is played near 2:1 is how the
sign is read (common practice); measured ratios fall from about 3.5:1 at slow tempos to 1:1 at
fast ones (A. Friberg and A. Sundström, "Swing Ratios and Ensemble Timing in Jazz Performance",
Music Perception 19, 2002).
"""

from collections import Counter
from fractions import Fraction

from sitegen.analysis.groove.line import Line
from sitegen.analysis.reading import Fact
from sitegen.score.chart import Chart

_FEWEST = 2
_MOST_OF_THEM = Fraction(3, 4)
_FEELS = {
    "swing": "Written straight and marked swing: play each pair of eighths long and short, "
    "near 2:1, and more even the faster it goes.",
    "shuffle": "Written straight and marked shuffle: play each pair of eighths long and short, "
    "2:1, as the outer notes of a triplet.",
}


def divided_beats(line: Line) -> list[tuple[int, Fraction]]:
    """Return the ticks of the beats that are divided in two, each with first : second note.

    Only beats that can swing are looked at: quarters, and the beats of 12/8.
    """
    found = []
    for bar, offsets in zip(line.grid.bars, line.bars, strict=True):
        length = bar.meter.swung
        inside: dict[int, list[int]] = {}
        for offset in offsets if length else ():
            inside.setdefault(offset // length, []).append(offset % length)
        for beat, own in inside.items():
            if len(own) == 2 and own[0] == 0:  # noqa: PLR2004 - divided in two
                ratio = Fraction(own[1], length - own[1])
                found.append((bar.origin + beat * length, ratio))
    return found


def swing_facts(line: Line) -> list[Fact]:
    """Return the ratio that nearly all divided beats of a line share."""
    beats = divided_beats(line)
    if len(beats) < _FEWEST:
        return []
    ratio, count = Counter(ratio for _, ratio in beats).most_common(1)[0]
    if count < _MOST_OF_THEM * len(beats):
        return []
    text = f"{ratio.numerator}:{ratio.denominator}"
    ticks = [tick for tick, own in beats if own == ratio]
    return [Fact(f"{line.prefix}.swing-ratio", text, text, "as written", line.places(ticks))]


def feel_facts(chart: Chart, facts: list[Fact]) -> list[Fact]:
    """Return the feel that the head asks for; `facts` are the ratios found as written."""
    if chart.feel == "straight":
        return []
    ratios = {fact.value for fact in facts if fact.path.endswith(".swing-ratio")}
    sentence = _FEELS[chart.feel] if ratios == {"1:1"} else ""
    return [Fact("feel", chart.feel, chart.feel, "", (), sentence)]
