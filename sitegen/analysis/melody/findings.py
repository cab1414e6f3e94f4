"""The facts of every melodic part of a chart: what its line does.

A part is melodic when it is pitched and mostly one note at a time; `line` says how its notes are
taken. Repeats are not written out. Paths:

- `<part>.parsons`: the Parsons code of the line, `*rururdd`
- `<part>.contour`: its shape in Huron's nine types, "convex"
- `<part>.phrase-contours`: the shapes of its phrases, "2 convex, 1 descending"
- `<part>.intervals`: how often each spelled interval comes, "2 unisons and 5 major seconds"
- `<part>.repeats-share`, `<part>.steps-share`, `<part>.thirds-share`, `<part>.leaps-share`:
  shares of its intervals: repeated pitches, seconds, thirds, fourths and wider
- `<part>.largest-leap`: its widest interval of a third or more, "up a minor sixth"
- `<part>.leaps-turned`: how many leaps of a fifth or more it turns back from, "2 of 3"
- `<part>.tessitura`: between which pitches it spends the middle half of its time, "G4 to B4"
- `<part>.most-heard`, `<part>.most-heard-share`: the pitch it is longest on, and for what share of
  its sounding time
- `<part>.climax`, `<part>.climax-position`: the bar of its highest note, where it is reached in
  one place only, and how far into the line that is
- `<part>.longest-figure`: how many notes the longest figure has that comes back within the line
- `<part>.most-repeated-figure`: how often the most repeated figure of three notes or more comes
- `<part>.sequence`: the figure that is restated step by step, "a diatonic sequence down a step"
- `<part>.shared-rhythm`: the bars of one rhythm and different pitches, "bars 1, 2 and 4"
- `<part>.phrases`: how many phrases it has
- `<part>.phrase-starts`: where they start against the bar, "2 early, 1 on, 1 late"
- `<part>.phrase-lengths`: how long they are in bars, "2, 2 and 4"
- `<part>.notes-a-second`: how fast it is at the chart's tempo
- `<part>.anticipating-share`: the share of its notes that start up to half a beat ahead of a beat
  and are held into it
- `<part>.key-degrees`: the degrees of the key that it uses, "1 2 3 5 6"
- `<part>.scale`: the scale that they make up whole, "minor pentatonic on E"
- `<part>.chromatic-notes`: how many of its notes lie outside the key

Each module says by which definition. Sentences tell what is worth telling; a bass line, which
follows the roots, has them only on its figures and the notes outside the key.
"""

from sitegen.analysis.melody.contour import contour_facts
from sitegen.analysis.melody.intervals import interval_facts
from sitegen.analysis.melody.line import MelodicLine, find_lines
from sitegen.analysis.melody.motifs import motif_facts
from sitegen.analysis.melody.phrase_facts import phrase_facts
from sitegen.analysis.melody.phrases import find_phrases
from sitegen.analysis.melody.rhythm import rhythm_facts
from sitegen.analysis.melody.scale import scale_facts
from sitegen.analysis.melody.tessitura import tessitura_facts
from sitegen.analysis.melody.timing import timing_facts
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart


def find_melody(reading: ChartReading) -> tuple[Fact, ...]:
    """Return the facts of the melodic parts, part by part; none for a chart without."""
    lines = find_lines(reading)
    return tuple(fact for line in lines for fact in _line_facts(line, reading.chart))


def _line_facts(line: MelodicLine, chart: Chart) -> list[Fact]:
    phrases = find_phrases(line, chart)
    return [
        *contour_facts(line, phrases),
        *interval_facts(line, phrases),
        *tessitura_facts(line),
        *motif_facts(line, phrases),
        *rhythm_facts(line),
        *phrase_facts(line, phrases),
        *timing_facts(line, chart.tempo),
        *scale_facts(line, chart.key),
    ]
