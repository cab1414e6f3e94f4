"""The archive: its front page, and a page for each value that write-ups are filed under."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sitegen.finding.facets import BY_ID, band_range
from sitegen.finding.facets_index import facet_files
from sitegen.finding.filing import FiledFacet, FiledValue, file_write_ups
from sitegen.pages.archive_views import IndexView, PartView, ValuesView, ValueView
from sitegen.pages.theme import Theme
from sitegen.pages.views import ArchiveView, FacetView, GroupView, Link, SiteView, ValueLink
from sitegen.site.addresses import INDEX, root_of, site_view
from sitegen.site.listing import Listed
from sitegen.site.settings import Settings
from sitegen.site.shelf_files import SHELF

ARCHIVE = "archive/"
"""The folder of all that write-ups are filed under, from the top of the site."""
NEWEST = 48
"""How many write-ups the front page shows."""
LINES, VALUES = 200, 800
"""How many write-ups one page of a value has, and how many values one page of a facet."""

_ALL, _INDEX = "All write-ups", "Index"
_FEW, _MANY = 16, 48
"""How many values stand on a page of all facets: of those of which there may be any number, and
of the others."""


def archive_pages(
    theme: Theme, settings: Settings, articles: Sequence[Listed], menu: Mapping[str, str]
) -> Mapping[str, bytes]:
    """Return the archive by path from the top: pages, and the files that combine its facets.

    A theme that has no pages for values gets all write-ups on its front page.
    """
    desk = _Desk(theme, settings, articles, menu)
    if not theme.has_index:
        return {INDEX: theme.render_archive(desk.whole()).encode()}
    pages = {path: text.encode() for path, text in desk.pages()}
    rows = [(one.address, one.front, one.entry, one.draft) for one in articles]
    return pages | {f"{SHELF}{name}": data for name, data in facet_files(rows, desk.filed)}


@dataclass(frozen=True)
class _Part:
    """One page of a long list: the name of its file, its number and what stands on it."""

    name: str
    view: PartView
    first: int
    last: int


class _Desk:
    """Where the pages of one archive are made."""

    def __init__(
        self, theme: Theme, settings: Settings, articles: Sequence[Listed], menu: Mapping[str, str]
    ) -> None:
        self._theme = theme
        self._settings = settings
        self._articles = articles
        self._menu = menu
        self.filed = file_write_ups([(one.front, one.entry) for one in articles])

    def whole(self) -> ArchiveView:
        """Return the front page with all write-ups."""
        return ArchiveView(self._site(""), _ALL, tuple(one.record() for one in self._articles))

    def pages(self) -> Iterator[tuple[str, str]]:
        """Yield all pages by path."""
        yield INDEX, self._theme.render_archive(self._front())
        groups = self._groups("")
        index = IndexView(self._site(ARCHIVE), _INDEX, groups)
        yield f"{ARCHIVE}{INDEX}", self._theme.render_index(index)
        lines = [self._theme.render_line(one.record()) for one in self._articles]
        for filed in self.filed:
            yield from self._facet_pages(filed)
            for value in filed.values:
                yield from self._value_pages(filed, value, lines)

    def _site(self, address: str) -> SiteView:
        return site_view(self._settings, address, self._menu)

    def _front(self) -> ArchiveView:
        newest = tuple(one.record() for one in self._articles[:NEWEST])
        years = next((one for one in self.filed if one.facet.id == "published"), None)
        return ArchiveView(
            self._site(""),
            _ALL,
            newest,
            total=len(self._articles),
            years=() if years is None else _links(years.values, f"{ARCHIVE}published/"),
            groups=self._groups(ARCHIVE),
            index=f"{ARCHIVE}{INDEX}",
            shelf=SHELF,
        )

    def _groups(self, top: str) -> tuple[GroupView, ...]:
        names = dict.fromkeys(filed.facet.group for filed in self.filed)
        return tuple(
            GroupView(
                name,
                tuple(_facet(one, top) for one in self.filed if one.facet.group == name),
            )
            for name in names
        )

    def _facet_pages(self, filed: FiledFacet) -> Iterator[tuple[str, str]]:
        """Yield the pages of all values: by name where there may be many."""
        values = filed.values
        if filed.facet.is_long:
            values = tuple(sorted(values, key=lambda value: value.words.casefold()))
        folder = f"{ARCHIVE}{filed.facet.id}/"
        for part in _parts(len(values), VALUES):
            some = _links(values[part.first : part.last], "")
            view = FacetView(filed.facet.id, filed.facet.name, "", len(values), some)
            path = f"{folder}{part.name}"
            site = self._site(folder if part.first == 0 else path)
            up = f"../{INDEX}"
            yield path, self._theme.render_values(ValuesView(site, view, up, part.view))

    def _value_pages(
        self, filed: FiledFacet, value: FiledValue, lines: Sequence[str]
    ) -> Iterator[tuple[str, str]]:
        folder = f"{ARCHIVE}{filed.facet.id}/{value.address}/"
        facet = Link(filed.facet.name, f"../{INDEX}")
        named = ValueLink(value.words, INDEX, len(value.numbers))
        combined = f"{root_of(folder)}{INDEX}?{_asked(filed, value)}"
        for part in _parts(len(value.numbers), LINES):
            path = f"{folder}{part.name}"
            site = self._site(folder if part.first == 0 else path)
            some = [lines[number] for number in value.numbers[part.first : part.last]]
            view = ValueView(site, facet, named, combined, some, part.view)
            yield path, self._theme.render_value(view)


def _facet(filed: FiledFacet, top: str) -> FacetView:
    """Return a facet with its values, the commonest where there are very many."""
    facet, values = filed.facet, filed.values
    most = _FEW if facet.is_long else _MANY
    folder = f"{top}{facet.id}/"
    if len(values) > most:
        often = sorted(values, key=lambda value: -len(value.numbers))[:most]
        kept = {value.address for value in often}
        values = tuple(value for value in values if value.address in kept)
    links = _links(values, folder)
    return FacetView(facet.id, facet.name, f"{folder}{INDEX}", len(filed.values), links)


def _links(values: Sequence[FiledValue], folder: str) -> tuple[ValueLink, ...]:
    return tuple(
        ValueLink(value.words, f"{folder}{value.address}/{INDEX}", len(value.numbers))
        for value in values
    )


def _asked(filed: FiledFacet, value: FiledValue) -> str:
    """Return what the front page's address has to say to show the write-ups of a value."""
    facet = filed.facet
    asked = band_range(value.words) if facet is BY_ID["tempo"] else value.address
    return f"{facet.id}={asked}"


def _parts(count: int, most: int) -> Iterator[_Part]:
    """Yield the pages of a list, of which the first is the index of its folder."""
    starts = range(0, max(count, 1), most)
    names = [INDEX, *(f"page-{number}.html" for number in range(2, len(starts) + 1))]
    links = tuple(Link(str(number), name) for number, name in enumerate(names, start=1))
    for number, (name, first) in enumerate(zip(names, starts, strict=True), start=1):
        yield _Part(name, PartView(number, links), first, first + most)
