"""Drawn charts, kept for as long as nothing that they are made of has changed."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

from sitegen.charts.defaults import SongDefaults
from sitegen.kinds.kind import Analysis, Drawing
from sitegen.site.cache import Cache, key_of
from sitegen.site.study import StudiedChart

Made = TypeVar("Made")


@dataclass(frozen=True)
class KeptDrawings:
    """The drawings in a cache that the program in the state `mark` made."""

    cache: Cache
    mark: str

    def draw(self, chart: StudiedChart, analysis: Analysis, defaults: SongDefaults) -> Drawing:
        """Return a chart as it was drawn before, or drawn now and kept."""
        parts = self._parts(chart, analysis, defaults)
        draw = chart.named.chart.kind.draw
        return self.keep(Drawing, parts, lambda: draw(analysis, chart.surroundings))

    def keep(self, kind: type[Made], parts: Sequence[object], make: Callable[[], Made]) -> Made:
        """Return what was made of the `parts` before, or make it now and keep it."""
        key = key_of(self.mark, *parts)
        kept = self.cache.get(key)
        if isinstance(kept, kind):
            return kept
        made = make()
        self.cache.put(key, made)
        return made

    def _parts(
        self, chart: StudiedChart, analysis: Analysis, defaults: SongDefaults
    ) -> tuple[object, ...]:
        """Return all that a drawing comes of.

        What was found in a chart comes of its text and of the song's defaults, save for what is
        told of it beside the other charts.
        """
        kind, around = chart.named.chart.kind, chart.surroundings
        places = (around.headings, around.charts) if kind.looks_around else ()
        return (
            kind.name,
            chart.named.chart.passage.text,
            chart.named.chart.reading.uses,
            defaults,
            (around.anchor, around.name, around.credits),
            places,
            analysis.findings,
        )
