"""How fast a line is, and which of its notes anticipate a beat.

A note anticipates when it starts off the felt beats, half a beat or less before the next one, and
is held into that beat (common practice, no source). Felt beats are the beat groups of the meter.
A note on a group's inner beat, such as the 2 of 6/8, is too early for that.
"""

from fractions import Fraction

from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import percent
from sitegen.score.tempo import Tempo

_SECONDS = 60


def timing_facts(line: MelodicLine, tempo: Tempo | None) -> list[Fact]:
    """Return the notes a second, from the first to the end of the last, and the early share."""
    facts = []
    if tempo is not None and len(line) > 1:
        pace, length = tempo.quarters_per_minute, line.ends[-1] - line.starts[0]
        rate = Fraction(
            len(line) * line.pulse.ticks * pace.numerator, _SECONDS * length * pace.denominator
        )
        text = f"{float(rate):.1f}"
        facts.append(Fact(f"{line.prefix}.notes-a-second", rate, text, "notes a second"))
    early = [index for index in range(len(line)) if _anticipates(line, index)]
    if early:
        share, path = Fraction(len(early), len(line)), f"{line.prefix}.anticipating-share"
        facts.append(Fact(path, share, percent(share), "of its notes", line.places(early)))
    return facts


def _anticipates(line: MelodicLine, index: int) -> bool:
    start = line.starts[index]
    before, after = line.pulse.beat_around(start)
    return start != before and line.ends[index] > after and 2 * (after - start) <= after - before
