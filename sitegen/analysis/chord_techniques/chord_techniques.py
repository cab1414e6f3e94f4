"""What is done with chords.

Paths, of the chart as written (a chord that is repeated or held counts once; repeats are not
written out):

- `roots`: how many different roots there are
- `power-chord-share`, `suspended-share`, `third-less-share`, `seventh-chord-share`,
  `inversion-share`: the share of these kinds among the changes of chord
- `inversions`: how many chords have another of their own notes in the bass; `foreign-basses`: how
  many have a bass that is none of their notes
- `harmonic-rhythm`: chords a bar
- `pushes`: chords that come an eighth or less ahead of the bar

With a key only:

- `applied-dominants`, `applied-dominants-resolved`: V and vii° of other degrees than the tonic
- `tritone-substitutes`: dominant sevenths that fall a semitone in place of a fifth
- `borrowed-chords`: chords of the parallel key
- `neapolitan`, `augmented-sixths`, `picardy-third`: how many there are
- `cadence`: the one at the end: "authentic", "half", "plagal", "deceptive", "backdoor", ...
- `cadences`: where sections end before the chart does, all of them: "half in bar 4, ..."
"""

from sitegen.analysis.chord_techniques.applied_chords import applied_facts
from sitegen.analysis.chord_techniques.cadences import cadence_facts
from sitegen.analysis.chord_techniques.functions import find_changes, in_key
from sitegen.analysis.chord_techniques.harmonic_rhythm import rhythm_facts
from sitegen.analysis.chord_techniques.kinds_of_chord import kind_facts
from sitegen.analysis.chord_techniques.mixture import mixture_facts
from sitegen.analysis.reading import ChartReading, Fact


def find_chord_techniques(reading: ChartReading) -> tuple[Fact, ...]:
    """Return what is done with the chords of a chart."""
    changes = find_changes(reading)
    if not changes:
        return ()
    chart = reading.chart
    facts = [
        *kind_facts(changes),
        *rhythm_facts(changes, chart),
    ]
    line = in_key(reading, changes)
    if line is None:
        return tuple(facts)
    return (*facts, *applied_facts(line), *mixture_facts(line), *cadence_facts(line, chart))
