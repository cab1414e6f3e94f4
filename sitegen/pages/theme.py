"""A theme: a folder of templates, styles, scripts and fonts that makes pages of the views."""

import hashlib
import re
from collections.abc import Mapping, Sequence
from pathlib import Path

import jinja2

from sitegen.kinds.named_chords import named_chords
from sitegen.pages.archive_views import IndexView, ValuesView, ValueView
from sitegen.pages.crate import by_year
from sitegen.pages.credits import byline, label_facts, musical_facts, recording_facts, song_credits
from sitegen.pages.facet_links import facet_links
from sitegen.pages.lettering import (
    natural_size,
    numeral_parts,
    printed,
    sentence_parts,
    spoken_date,
    symbol_levels,
    with_ids_under,
)
from sitegen.pages.linked_data import linked_data
from sitegen.pages.sharing import description, open_graph_locale, tab_title
from sitegen.pages.views import (
    ArchiveEntry,
    ArchiveView,
    ArticleView,
    ChartView,
    FindView,
    PageView,
    RelatedView,
    RoleView,
)
from sitegen.score.clock import clock_text

_FILTERS = (
    by_year,
    byline,
    clock_text,
    description,
    facet_links,
    label_facts,
    linked_data,
    musical_facts,
    named_chords,
    natural_size,
    numeral_parts,
    open_graph_locale,
    printed,
    recording_facts,
    sentence_parts,
    song_credits,
    spoken_date,
    symbol_levels,
    tab_title,
    with_ids_under,
)
TEMPLATES = ("article", "archive", "page", "missing")
FIRST_SCRIPT = "page.js"
ICON = "icon.svg"
"""The site's sign in tabs and bookmarks, at the top of a theme's folder and of the site."""
NOTATION_FONT = "fonts/notation.woff2"
"""Where a theme's styles look for the music font, from the top of the site."""

# A colour of the styles by its name, `--ink: #191c24` or `--ink: light-dark(#191c24, #e8e4da)`.
_COLOUR = re.compile(r"--([\w-]+):\s*(?:light-dark\(\s*)?(#[0-9a-fA-F]{6})\b")


class Theme:
    """Templates, styles, scripts and fonts of one folder; nothing is read from anywhere else.

    `stylesheet` and `script` are addresses from the top of the site that name the very state of
    the styles and scripts; `script` is "" for a theme without any. Scripts are modules that load
    each other by their names; the page loads the first one, `page.js`. `archive_stylesheet` is
    loaded beside the other by the pages that list write-ups, so that a write-up need not carry it;
    "" where the theme's folder `styles/archive` has none.
    """

    def __init__(self, folder: Path, notation_style: str = "") -> None:
        self._folder = folder
        self._styles = _joined_styles(folder / "styles") + _small(notation_style)
        self._archive_styles = _joined_styles(folder / "styles" / "archive")
        self._scripts = _read_scripts(folder)
        self.stylesheet = f"styles/{folder.name}.{_mark(self._styles.encode())}.css"
        self.archive_stylesheet = ""
        if self._archive_styles:
            mark = _mark(self._archive_styles.encode())
            self.archive_stylesheet = f"styles/{folder.name}-archive.{mark}.css"
        self._script_folder = f"scripts/{_mark(*self._scripts.values())}"
        has_script = FIRST_SCRIPT in self._scripts
        self.script = f"{self._script_folder}/{FIRST_SCRIPT}" if has_script else ""
        self._environment = _environment(folder)
        self._environment.globals["stylesheet"] = self.stylesheet
        self._environment.globals["archive_stylesheet"] = self.archive_stylesheet
        self._environment.globals["script"] = self.script
        self._environment.globals["icon"] = ICON if (folder / ICON).is_file() else ""

    @property
    def has_find(self) -> bool:
        """True for a theme with a page where passages are looked up."""
        return (self._folder / "pages" / "find.html").is_file()

    @property
    def colours(self) -> Mapping[str, str]:
        """The colours of a light page by the names that the styles give them, as `#rrggbb`."""
        colours: dict[str, str] = {}
        for name, colour in _COLOUR.findall(self._styles):
            colours.setdefault(name, colour)
        return colours

    def render_article(self, view: ArticleView) -> str:
        """Return the page of one write-up."""
        return self._page("article", article=view, site=view.site, glyphs=view.glyphs)

    def render_archive(self, view: ArchiveView) -> str:
        """Return the page that lists all write-ups, the newest first."""
        return self._page("archive", archive=view, site=view.site, glyphs=())

    def render_find(self, view: FindView) -> str:
        """Return the page where passages are looked up by their music and their words."""
        return self._page("find", find=view, site=view.site, glyphs=())

    @property
    def has_index(self) -> bool:
        """True for a theme with pages of what write-ups are filed under."""
        return (self._folder / "pages" / "value.html").is_file()

    def render_index(self, view: IndexView) -> str:
        """Return the page of all facets."""
        return self._page("index", index=view, site=view.site, glyphs=())

    def render_values(self, view: ValuesView) -> str:
        """Return the page of all values of a facet."""
        return self._page("values", values=view, site=view.site, glyphs=())

    def render_value(self, view: ValueView) -> str:
        """Return the page of the write-ups under one value."""
        return self._page("value", value=view, site=view.site, glyphs=())

    def render_line(self, entry: ArchiveEntry) -> str:
        """Return a write-up as one line of a list."""
        return self._piece("record-line", entry=entry, front=entry.front)

    def render_page(self, view: PageView) -> str:
        """Return a free page."""
        return self._page("page", page=view, site=view.site, glyphs=view.glyphs)

    def render_missing(self, view: PageView) -> str:
        """Return the page for an address under which nothing is found."""
        return self._page("missing", page=view, site=view.site, glyphs=view.glyphs)

    def render_chart(self, view: ChartView) -> str:
        """Return the figure of one chart: caption, drawing or faults, and the account in words."""
        return self._piece("chart", chart=view)

    def render_role(self, view: RoleView) -> str:
        """Return an inline role as HTML that can stand in running text."""
        return self._piece("roles", role=view)

    def render_text(self, name: str, **values: object) -> str:
        """Return the text of a page that a theme may have, set from its piece; else ""."""
        has = (self._folder / "pieces" / f"{name}.html").is_file()
        return self._piece(name, **values) if has else ""

    def render_related(self, views: Sequence[RelatedView]) -> str:
        """Return the list of write-ups that a page leads to; "" where there are none to name."""
        return self.render_text("related", related=views) if views else ""

    def assets(self, notation_font: bytes = b"") -> Mapping[str, bytes]:
        """Return what is published beside the pages, by path from the top of the site.

        `notation_font` is the music font as WOFF2; without it none is published.
        """
        files = {self.stylesheet: self._styles.encode()}
        if self.archive_stylesheet:
            files[self.archive_stylesheet] = self._archive_styles.encode()
        for name, text in self._scripts.items():
            files[f"{self._script_folder}/{name}"] = text
        for path in sorted((self._folder / "fonts").glob("*")):
            files[f"fonts/{path.name}"] = path.read_bytes()
        if (self._folder / ICON).is_file():
            files[ICON] = (self._folder / ICON).read_bytes()
        if notation_font:
            files[NOTATION_FONT] = notation_font
        return files

    def _page(self, name: str, **values: object) -> str:
        return self._environment.get_template(f"pages/{name}.html").render(values)

    def _piece(self, name: str, **values: object) -> str:
        return self._environment.get_template(f"pieces/{name}.html").render(values).strip()


def load_theme(folder: Path, notation_style: str = "") -> Theme:
    """Return the theme in `folder`; `notation_style` are the rules that the engravings need.

    Raises FileNotFoundError naming the first template that the folder lacks.
    """
    for name in TEMPLATES:
        path = folder / "pages" / f"{name}.html"
        if not path.is_file():
            raise FileNotFoundError(f"{folder} is no theme: it has no pages/{name}.html")
    return Theme(folder, notation_style)


def _joined_styles(folder: Path) -> str:
    """Return all styles of a folder in the order of their file names, which start with a number.

    They travel without comments and blanks.
    """
    paths = sorted(folder.glob("*.css"))
    return _small("".join(path.read_text(encoding="utf-8") for path in paths))


def _small(styles: str) -> str:
    from rcssmin import cssmin  # noqa: PLC0415 - only a theme that is loaded needs it

    return str(cssmin(styles))


def _read_scripts(folder: Path) -> dict[str, bytes]:
    """Return the scripts by file name, without comments and blanks."""
    from rjsmin import jsmin  # noqa: PLC0415 - only a theme that is loaded needs it

    paths = sorted((folder / "scripts").glob("*.js"))
    return {path.name: jsmin(path.read_text(encoding="utf-8")).encode() for path in paths}


def _mark(*contents: bytes) -> str:
    """Return a few letters that stand for some contents and for no other."""
    return hashlib.sha256(b"\0".join(contents)).hexdigest()[:10]


def _environment(folder: Path) -> jinja2.Environment:
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(folder),
        autoescape=True,
        auto_reload=False,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters.update({function.__name__: function for function in _FILTERS})
    return environment
