"""The moments of a recording as links: of the prose, the front matter, the charts and the plan."""

from collections.abc import Iterable
from urllib.parse import quote

from sitegen.article.embeds import fill_seconds
from sitegen.article.front import Moment, Video
from sitegen.article.front_values import is_web_address
from sitegen.figures.form_plan import PlanContent
from sitegen.pages.views import TimeLink
from sitegen.score.clock import clock_text


def moment_href(video: Video, seconds: float) -> str:
    """Return the link to a moment of the recording, "" where the write-up names none.

    The moment is told as a media fragment, `#t=83` (W3C, Media Fragments URI 1.0, 2012), to the
    page where the recording is heard, else to its file; a host's player has its own way.
    """
    whole = int(seconds)
    place = (video.page or file_href(video)).partition("#")[0]
    return f"{place}#t={whole}" if place else fill_seconds(video.embed, whole)


def file_href(video: Video) -> str:
    """Return the link to the file, "" without one; a name may hold what an address cannot."""
    return video.file if is_web_address(video.file) else quote(video.file)


def moment_links(video: Video, moments: Iterable[Moment]) -> tuple[TimeLink, ...]:
    """Return the front matter's moments as links; none where there is nothing to link to."""
    return tuple(
        TimeLink(f"{clock_text(moment.seconds)} {moment.name}", href, moment.seconds)
        for moment in moments
        if (href := moment_href(video, moment.seconds))
    )


def section_links(video: Video, content: object) -> tuple[TimeLink | None, ...]:
    """Return the start of each section of a form plan as a link, None for an unknown one.

    Returns nothing for any other drawing, and where there is nothing to link to.
    """
    if not isinstance(content, PlanContent) or not moment_href(video, 0):
        return ()
    return tuple(
        None
        if row.begin is None
        else TimeLink(row.start, moment_href(video, row.begin), row.begin)
        for row in content.rows
    )
