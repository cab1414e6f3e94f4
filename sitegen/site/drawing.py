"""The charts and the text of a write-up, drawn."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from sitegen.article import Fence, RoleUse, render_body
from sitegen.article.front import Video
from sitegen.pages.theme import Theme
from sitegen.pages.views import ChartView, TimeLink
from sitegen.score.clock import clock_text
from sitegen.site.bug import Bug, attempt
from sitegen.site.inline import role_view
from sitegen.site.kept_drawings import KeptDrawings
from sitegen.site.moments import moment_href, section_links
from sitegen.site.study import StudiedChart, Study, song_defaults

PLAN = "Plan"
"""The series whose first chart is repeated near the top of the page."""


@dataclass(frozen=True)
class Drawn:
    """What a write-up or page looks like, without the page around it.

    `plan` is the chart that is repeated near the top, `glyphs` what all charts share, `video`
    the recording with the whole address of its host's player.
    """

    body: str
    charts: tuple[ChartView, ...]
    glyphs: tuple[str, ...]
    plan: ChartView | None = None
    video: Video = field(default=Video())


def draw(
    study: Study, theme: Theme, bugs: list[Bug], kept: KeptDrawings | None = None
) -> Drawn | None:
    """Return the charts and the text of a study, drawn; None after a failure.

    Charts that are among the `kept` ones are not drawn anew.
    """
    article = study.article
    views = _draw_charts(study, bugs, kept)
    if article is None or views is None:
        return None
    by_place = {
        chart.named.chart.passage.opening: view
        for chart, view in zip(study.charts, views, strict=True)
    }

    def draw_fence(fence: Fence) -> str:
        return theme.render_chart(by_place[fence.passage.opening])

    def draw_role(use: RoleUse) -> str:
        return theme.render_role(role_view(use, study.citations, study.video))

    doing = f"setting the text of {study.name}"
    body = attempt(bugs, doing, render_body, article, draw_fence, draw_role)
    if body is None:
        return None
    return Drawn(body, views, _glyphs(views), _plan(study, views), study.video)


def draw_ahead(study: Study, kept: KeptDrawings, first: int, step: int) -> None:
    """Draw every `step`-th chart of a study, from the one at `first` on, and keep them."""
    for chart in study.charts[first::step]:
        _draw_chart(chart, study, [], kept)


def _draw_charts(
    study: Study, bugs: list[Bug], kept: KeptDrawings | None
) -> tuple[ChartView, ...] | None:
    views = [_draw_chart(chart, study, bugs, kept) for chart in study.charts]
    drawn = tuple(view for view in views if view is not None)
    return drawn if len(drawn) == len(study.charts) else None


def _draw_chart(
    chart: StudiedChart, study: Study, bugs: list[Bug], kept: KeptDrawings | None
) -> ChartView | None:
    kind, analysis = chart.named.chart.kind, chart.analysis
    if analysis is None or study.article is None:
        return None
    doing = f"drawing {study.place(chart.named.chart)}"
    if kept is None:
        drawing = attempt(bugs, doing, kind.draw, analysis, chart.surroundings)
    else:
        defaults = song_defaults(study.article)
        drawing = attempt(bugs, doing, kept.draw, chart, analysis, defaults)
    if drawing is None:
        return None
    named = chart.named
    title = named.chart.reading.title
    return ChartView(
        named.id,
        named.anchor,
        named.name,
        kind.name,
        title,
        drawing,
        at=_moment(chart, study),
        starts=section_links(study.video, drawing.content),
    )


def _moment(chart: StudiedChart, study: Study) -> TimeLink | None:
    """Return where a chart stands in the recording; not every kind knows it."""
    seconds = getattr(chart.named.chart.reading.chart, "start_time", None)
    if not isinstance(seconds, int):
        return None
    return TimeLink(clock_text(seconds), moment_href(study.video, seconds), seconds)


def _glyphs(views: Sequence[ChartView]) -> tuple[str, ...]:
    """Return the definitions that the charts of a page share, each once."""
    shared: dict[str, str] = {}
    for view in views:
        if view.drawing is not None:
            shared |= view.drawing.glyphs
    return tuple(shared[name] for name in sorted(shared))


def _plan(study: Study, views: Sequence[ChartView]) -> ChartView | None:
    """Return the form plan to repeat near the top: none where the text opens with it anyway."""
    pairs = zip(study.charts, views, strict=True)
    plans = [(chart, view) for chart, view in pairs if chart.named.chart.kind.series == PLAN]
    if not plans or study.article is None:
        return None
    chart, view = plans[0]
    line = chart.named.chart.passage.opening.line
    return view if any(heading.span.line < line for heading in study.article.headings) else None
