"""What the bass does: its motion, lines by step, pedals, and lines that move inside a chord.

Paths of the chord symbols, the bass being the note after the slash and the root without one; of
the chart as written, repeats not written out, a second ending after what stands before the first:

- `bass-line`: the basses at the changes of chord, "E♭ D C B♭"; only where a symbol has a slash
- `bass-motions`: every motion by its interval, the smaller way round; only where one has a slash
- `bass-descent`, `bass-ascent`: notes of the longest line by step, four or more
- `chromatic-bass-descent`, `chromatic-bass-ascent`: the same, by semitones alone
- `lament-bass`: from 1 down to 5 in minor: "diatonic", "partly chromatic" or "chromatic"
- `pedal-bass`: chords over the longest pedal; `pedal-bass-foreign`: those that lack its note
- `line-cliche`: a voice by semitones over a root that stays, as degrees: "R 7 ♭7 6"

Paths of a part that plays the bass, from its notes at the changes of chord: `<part>.bass-line`,
`<part>.bass-motions` (the real way: "up a fourth"), and `<part>.` with all of the above but
`line-cliche`. Of any other part that plays several notes at a time:

- `<part>.top-pedal`: chords under the longest pedal in the top, a highest note that stays

Where a part plays the bass, what the basses do is told by its notes and not by the symbols.
"""

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from itertools import chain, pairwise

from sitegen.analysis.bass.bass_line import (
    BassLine,
    BassTone,
    by_bass,
    played_lines,
    written_line,
)
from sitegen.analysis.bass.line_cliches import cliche_facts
from sitegen.analysis.bass.pedals import pedal_facts
from sitegen.analysis.bass.step_lines import step_facts
from sitegen.analysis.bass.top_pedals import top_pedal_facts
from sitegen.analysis.facts import interval_words
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.roots.chord_line import find_passages
from sitegen.analysis.roots.wording import names_said
from sitegen.harmony.root_motion import name_motion
from sitegen.score.interval import Interval
from sitegen.score.pitch import Pitch, PitchName

_STEPS = {
    "a minor second": "a semitone",
    "an augmented unison": "a semitone",
    "1 semitone": "a semitone",
    "a major second": "a whole tone",
}

Motion = tuple[BassTone, BassTone]
"""Two tones of a line, one after the other."""


def find_bass_motions(reading: ChartReading) -> tuple[Fact, ...]:
    """Return what the basses of a chart do, those of the symbols and those that are played."""
    passages = find_passages(reading)
    if not passages:
        return ()
    key = reading.chart.key
    played = list(played_lines(reading, passages))
    facts = []
    for line in (written_line(passages), *played):
        told = bool(line.part) or not played
        facts += _motion_facts(line)
        facts += step_facts(line, key, told=told)
        facts += pedal_facts(line, key, told=told)
    return (
        *facts,
        *cliche_facts(passages, bass_is_known=not played),
        *top_pedal_facts(reading, passages),
    )


def _motion_facts(line: BassLine) -> list[Fact]:
    """Return a line and its tally; nothing for symbols without a slash."""
    written = (tone.held for stretch in line.stretches for tone in stretch)
    if not line.part and all(held.bass == held.root for held in written):
        return []
    stretches = [by_bass(stretch) for stretch in line.stretches]
    tones = list({tone.held.number: tone for tone in chain.from_iterable(stretches)}.values())
    text = names_said(tone.name for tone in tones)
    facts = [Fact(f"{line.prefix}bass-line", text, text, "", tuple(tone.place for tone in tones))]
    motions = list(chain.from_iterable(pairwise(stretch) for stretch in stretches))
    return [*facts, _tally(line, motions)] if motions else facts


def _tally(line: BassLine, motions: Sequence[Motion]) -> Fact:
    counts = Counter(_motion(first, second) for first, second in motions)
    text = ", ".join(f"{words} {count}" for words, count in counts.most_common())
    places = tuple(second.place for _, second in motions)
    return Fact(f"{line.prefix}bass-motions", text, text, "", places)


def _motion(first: BassTone, second: BassTone) -> str:
    """Return how the bass moves: as it is played, or the smaller way round between symbols."""
    if first.midi is None or second.midi is None:
        return name_motion(first.name, second.name)
    low, high = (first, second) if first.midi <= second.midi else (second, first)
    words = _played_words(low.name, high.name, abs(second.midi - first.midi))
    return f"{'up' if low is first else 'down'} {words}"


@lru_cache(maxsize=1024)
def _played_words(low: PitchName, high: PitchName, semitones: int) -> str:
    bottom = Pitch(low, 2)
    words = interval_words(Interval.between(bottom, Pitch.of(high, bottom.midi + semitones)))
    return _STEPS.get(words, words)
