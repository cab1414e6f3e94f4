"""The archive in pictures: how many write-ups each thing has, and the songs' plans side by side.

A bar stands in the row of the table that gives its figure, so that no picture says what its table
does not: whoever cannot see the bars reads the same table.
"""

from collections.abc import Iterator, Sequence

from sitegen.finding.filing import FiledFacet, file_write_ups
from sitegen.pages.pictures_view import BarView, PictureView, PlanStrip, PlanView, StripPart
from sitegen.pages.views import Link
from sitegen.site.addresses import INDEX, PICTURES, href, root_of
from sitegen.site.archive_pages import ARCHIVE
from sitegen.site.listing import Listed

SHOWN = ("key", "tempo", "meter", "root-motion", "chord", "chord-tones", "length")
"""The facets that are shown, by their ids."""
MOST_BARS, MOST_PLANS = 24, 60
_TITLES = {
    "key": "Keys",
    "tempo": "Tempos",
    "meter": "Meters",
    "root-motion": "Root motions",
    "chord": "Chord types",
    "chord-tones": "How much of a tune are chord tones",
    "length": "How long the songs are",
}
_WORDS = {"tempo": "beats a minute", "chord-tones": "of the notes of a tune"}


def pictures_of(articles: Sequence[Listed]) -> tuple[PictureView, ...]:
    """Return a picture for each of the shown facets that has values."""
    filed = {
        one.facet.id: one for one in file_write_ups([(one.front, one.entry) for one in articles])
    }
    return tuple(_picture(filed[id_]) for id_ in SHOWN if id_ in filed)


def _picture(filed: FiledFacet) -> PictureView:
    """Return the values as bars, the commonest where there are very many, in the facet's order."""
    values = filed.values
    often = sorted(values, key=lambda value: -len(value.numbers))[:MOST_BARS]
    kept = {value.address for value in often}
    most = len(often[0].numbers)
    folder = f"{root_of(PICTURES)}{ARCHIVE}{filed.facet.id}/"
    bars = tuple(
        BarView(
            Link(value.words, f"{folder}{value.address}/{INDEX}"),
            len(value.numbers),
            round(100 * len(value.numbers) / most, 2),
        )
        for value in values
        if value.address in kept
    )
    id_ = filed.facet.id
    rest = Link(f"all {len(values)}", f"{folder}{INDEX}") if len(values) > len(bars) else None
    return PictureView(id_, _TITLES[id_], filed.facet.name, _WORDS.get(id_, ""), bars, rest)


def plans_of(articles: Sequence[Listed]) -> PlanView | None:
    """Return the plans of the newest songs that have one, to one scale; None without any."""
    strips = tuple(_strips(articles))[:MOST_PLANS]
    if not strips:
        return None
    longest = max(strip.bars for strip in strips)
    return PlanView(strips, longest)


def _strips(articles: Sequence[Listed]) -> Iterator[PlanStrip]:
    for one in articles:
        sections = one.entry.sections
        if sections:
            parts = tuple(StripPart(part.letter, part.name, part.bars) for part in sections)
            bars = sum(part.bars for part in sections)
            link = Link(one.front.song.title or one.front.title, _href(one))
            letters = " ".join(part.letter for part in sections)
            yield PlanStrip(link, letters, parts, bars)


def _href(one: Listed) -> str:
    return href(one.address, root_of(PICTURES))
