"""Tunes in the public domain, and a few lines written for the tests, as notation charts."""

from unit.charts.reading_aloud import chart_of, read

from sitegen.analysis.melody import MelodicLine, find_lines, find_melody
from sitegen.analysis.naming import name_chords, name_notes
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart

# Traditional, "Ah! vous dirai-je, maman".
TWINKLE = """
    key: C major
    meter: 4/4
    tempo: 96

    count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | C4 C4 G4 G4 | A4 A4 G4    | F4 F4 E4 E4 | D4 D4 C4    |

    count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | G4 G4 F4 F4 | E4 E4 D4    | G4 G4 F4 F4 | E4 E4 D4    |

    count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | C4 C4 G4 G4 | A4 A4 G4    | F4 F4 E4 E4 | D4 D4 C4    |
"""

# Traditional, "Mary Had a Little Lamb" (words by S. J. Hale, 1830).
MARY = """
    key: C major
    meter: 4/4

    count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | E4 D4 C4 D4 | E4 E4 E4    | D4 D4 D4    | E4 G4 G4    |

    count | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  | 1  2  3  4  |
    voice | E4 D4 C4 D4 | E4 E4 E4 E4 | D4 D4 E4 D4 | C4          |
"""

# L. v. Beethoven, Symphony No. 9, finale.
ODE_TO_JOY = """
    key: D major
    meter: 4/4
    tempo: 120

    count | 1   2   3   4   | 1   2   3   4   | 1   2   3   4   | 1   2 &   3   4   |
    voice | F#4 F#4 G4  A4  | A4  G4  F#4 E4  | D4  D4  E4  F#4 | F#4   E4  E4      |

    count | 1   2   3   4   | 1   2   3   4   | 1   2   3   4   | 1   2 &   3   4   |
    voice | F#4 F#4 G4  A4  | A4  G4  F#4 E4  | D4  D4  E4  F#4 | E4    D4  D4      |
"""

# Traditional, "New Britain"; words by J. Newton, 1779.
AMAZING_GRACE = """
    key: G major
    meter: 3/4
    tempo: 90

    count | 3  | 1  2  3  &  | 1  2  3  | 1  2  3  | 1  2  3  | 1  2  3  &  | 1  2  3  |
    voice | D4 | G4    B4 G4 | B4    A4 | G4    E4 | D4    D4 | G4    B4 G4 | B4    A4 |

    count | 1  2  3  | 1  2  3  | 1  2  3  &  | 1  2  3  | 1  2  3  | 1  2  3  |
    voice | D5       |       B4 | D5    B4 G4 | B4    A4 | G4    E4 | D4    D4 |

    count | 1  2  3  &  | 1  2  3  | 1  2  3  | 1  2  |
    voice | G4    B4 G4 | B4    A4 | G4       |       |
"""


def chart(text: str) -> Chart:
    """Return the chart of a notation text without a fault."""
    return chart_of(read(text))


def reading_of(chart: Chart) -> ChartReading:
    """Return a chart with its notes and chords named and nothing else found."""
    return ChartReading(chart, name_notes(chart), name_chords(chart))


def line_of(text: str, part: str = "voice") -> MelodicLine:
    """Return the line of a part."""
    return next(x for x in find_lines(reading_of(chart(text))) if x.part.name == part)


def facts_of(text: str) -> dict[str, Fact]:
    """Return what is found in the lines of a notation text, by path."""
    return {fact.path: fact for fact in find_melody(reading_of(chart(text)))}


def bars_of(fact: Fact) -> list[int]:
    """Return the bar of each place that a fact is seen at."""
    return [place.bar for place in fact.evidence]


def sentences_of(text: str) -> list[str]:
    """Return the sentences on the lines of a notation text."""
    return [fact.sentence for fact in facts_of(text).values() if fact.sentence]
