"""Drawn charts, kept for as long as nothing that they are made of has changed."""

from dataclasses import dataclass

from sitegen.charts.defaults import SongDefaults
from sitegen.kinds.kind import Analysis, Drawing
from sitegen.site.cache import Cache, key_of
from sitegen.site.study import StudiedChart


@dataclass(frozen=True)
class KeptDrawings:
    """The drawings in a cache that the program in the state `mark` made."""

    cache: Cache
    mark: str

    def draw(self, chart: StudiedChart, analysis: Analysis, defaults: SongDefaults) -> Drawing:
        """Return a chart as it was drawn before, or drawn now and kept."""
        key = self._key(chart, analysis, defaults)
        kept = self.cache.get(key)
        if isinstance(kept, Drawing):
            return kept
        drawing = chart.named.chart.kind.draw(analysis, chart.surroundings)
        self.cache.put(key, drawing)
        return drawing

    def _key(self, chart: StudiedChart, analysis: Analysis, defaults: SongDefaults) -> str:
        """Return the hash of all that a drawing comes of.

        What was found in a chart comes of its text and of the song's defaults, save for what is
        told of it beside the other charts.
        """
        kind, around = chart.named.chart.kind, chart.surroundings
        places = (around.headings, around.charts) if kind.looks_around else ()
        return key_of(
            self.mark,
            kind.name,
            chart.named.chart.passage.text,
            defaults,
            (around.anchor, around.name, around.credits),
            places,
            analysis.findings,
        )
