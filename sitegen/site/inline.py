"""The inline roles of a write-up as the theme is given them."""

from collections.abc import Mapping

from sitegen.article import RoleUse
from sitegen.article.front import Video
from sitegen.pages.views import RoleView
from sitegen.score.chord import Chord, NoChord
from sitegen.score.clock import clock_text
from sitegen.site.citations import Citation
from sitegen.site.moments import moment_href
from sitegen.source import Span


def role_view(use: RoleUse, citations: Mapping[Span, Citation], video: Video) -> RoleView:
    """Return a role as it is set: what is read, and where it leads to.

    Raises KeyError for a `see` or `fact` without a citation: such a write-up is not drawn.
    """
    match use.name:
        case "chord":
            chord = use.value if isinstance(use.value, Chord | NoChord) else None
            return RoleView("chord", str(use.value), chord)
        case "degree":
            return RoleView("degree", str(use.value))
        case "note":
            return RoleView("note", str(use.value))
        case "at" if isinstance(use.value, int):
            href = moment_href(video, use.value)
            return RoleView("at", clock_text(use.value), href=href, seconds=use.value)
        case "see":
            citation = citations[use.span]
            return RoleView("see", citation.text, href=citation.href)
    return RoleView("fact", citations[use.span].text)
