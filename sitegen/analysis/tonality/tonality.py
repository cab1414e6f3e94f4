"""What a chart's notes and chords say of its key, beside what its author says.

Pitched notes of all parts and chord symbols both count, as `heard` says; repeats as written.
Charts of a few notes are left in silence. Paths, all of the chart:

- `key-found`: the major or minor key that the notes and chords fit best;
- `key-fit`: how sure that is, the share of belief among 24 keys (see `sitegen.harmony.find_key`);
- `key-runner-up`: the next best key;
- `key-agreement`: the author's key beside it: "agrees", "same tonic", "relative", "differs"; only
  where the fit is a half or more;
- `key-readings`: two keys that the same notes are read in, where what fits best is not what begins
  the chart, or hardly better than the other;
- `mode-evidence`: the mode, major and minor apart, that alone holds all notes on the tonic; its
  evidence is the degree that makes it so;
- `scale-degrees-missing`: the degrees of the author's key that never sound, by number;
- `tonic-bars`: how many bars the tonic sounds in; 0 is telling;
- `tonic-chords`: how many chords stand on the tonic; 0 is telling;
- `key-changes`: the keys of the stretches of two bars or more, where there are several.
"""

from sitegen.analysis.reading import ChartReading, Fact
from sitegen.analysis.tonality.degrees import degree_facts
from sitegen.analysis.tonality.heard import hear_chart
from sitegen.analysis.tonality.keys import key_facts
from sitegen.analysis.tonality.modes import mode_facts
from sitegen.analysis.tonality.stretches import stretch_facts


def find_tonality(reading: ChartReading) -> tuple[Fact, ...]:
    """Return the facts of a chart's key, mode, tonic and changes of key; none of too few notes."""
    hearing = hear_chart(reading)
    if not hearing.is_enough:
        return ()
    return (
        *key_facts(hearing),
        *mode_facts(hearing),
        *degree_facts(hearing),
        *stretch_facts(hearing),
    )
