"""What a reader can take away of a chart: a drawing, notation for programs, and its sound."""

from collections.abc import Mapping

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.engraved import Engraved
from sitegen.kinds.kind import Surroundings
from sitegen.performance import Performance, write_midi

SUFFIXES = (".svg", ".mei", ".musicxml", ".mid")
"""What files to take away end in; their name before it is the anchor of their chart."""


def chart_files(
    reading: ChartReading, engraved: Engraved, performance: Performance, around: Surroundings
) -> Mapping[str, bytes]:
    """Return the four files of a chart of notes or chords, by name.

    They say whose the music is where the write-up does, and are the same for the same chart.
    """
    from sitegen.engraving.mei.head import with_head  # noqa: PLC0415 - only to draw
    from sitegen.engraving.musicxml import write_musicxml  # noqa: PLC0415 - the same
    from sitegen.engraving.svg.standalone import svg_file  # noqa: PLC0415 - the same

    title = reading.chart.title or around.name
    contents = (
        svg_file(engraved.wide, engraved.glyphs).encode(),
        with_head(engraved.mei, title, around.credits).encode(),
        write_musicxml(reading, around.credits, engraved.plan).encode(),
        write_midi(performance, title),
    )
    names = (f"{around.anchor}{suffix}" for suffix in SUFFIXES)
    return dict(zip(names, contents, strict=True))
