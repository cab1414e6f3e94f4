"""One write-up or page drawn and written: the second of a build's two rounds."""

import shutil
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path

from sitegen.article import Article
from sitegen.engraving.style import NOTATION_STYLE
from sitegen.kinds.kind import ChartKind
from sitegen.pages.theme import Theme, load_theme
from sitegen.pages.views import ArticleView, Link, PageView, SiteView
from sitegen.site.addresses import INDEX
from sitegen.site.bug import Bug, attempt
from sitegen.site.cards import Card, make_card
from sitegen.site.content import ContentFile
from sitegen.site.drawing import Drawn, draw
from sitegen.site.moments import moment_links
from sitegen.site.recording import recording_view
from sitegen.site.study import Study, study_file


@dataclass(frozen=True)
class Press:
    """What all pages of an edition share; it goes to the other processes.

    `top` is the folder that is filled, `theme` the theme's; `state` are the theme's addresses
    for its styles and scripts, which name their very state.
    """

    top: Path
    theme: Path
    state: tuple[str, str]
    kinds: tuple[ChartKind, ...]

    def load_theme(self) -> Theme:
        """Return the theme, loaded once a process for as long as it stays the same."""
        return _load_once(self.theme, self.state)


@dataclass(frozen=True)
class Sheet:
    """One page to be made; its neighbours and `draft` matter to write-ups only."""

    file: ContentFile
    site: SiteView
    earlier: Link | None = None
    later: Link | None = None
    draft: bool = False


@lru_cache(maxsize=4)
def _load_once(folder: Path, _state: tuple[str, str]) -> Theme:
    return load_theme(folder, NOTATION_STYLE)


@dataclass(frozen=True)
class MadePage:
    """A page ready to be written: `html` is None where something failed.

    `files` are its downloads and pictures by name, `attachments` the author's files beside it by
    their path from its folder.
    """

    html: str | None
    files: Mapping[str, bytes] = field(default_factory=dict)
    attachments: Mapping[str, Path] = field(default_factory=dict)
    bugs: tuple[Bug, ...] = ()


def press_sheet(sheet: Sheet, press: Press) -> tuple[Bug, ...]:
    """Write one page with its pictures and downloads; return what failed."""
    study = study_file(sheet.file, press.kinds)
    page = make_page(sheet, study, press.load_theme())
    bugs = list(page.bugs)
    if page.html is not None:
        doing = f"writing the page of {study.name}"
        attempt(bugs, doing, _write, press.top / sheet.file.address, page.html, page)
    return tuple(bugs)


def make_page(sheet: Sheet, study: Study, theme: Theme) -> MadePage:
    """Return the page of what was studied, drawn and set; nothing is written."""
    bugs = list(study.bugs)
    drawn = draw(study, theme, bugs)
    if drawn is None or study.article is None:
        return MadePage(None, bugs=tuple(bugs))
    doing = f"drawing the card of {study.name}"
    card = attempt(bugs, doing, _draw_card, theme, sheet, study, drawn)
    doing = f"making the page of {study.name}"
    html = attempt(bugs, doing, _render, theme, sheet, study.article, drawn, card)
    pictures = {} if card is None else {card.name: card.data}
    return MadePage(html, {**_downloads(drawn), **pictures}, study.files, tuple(bugs))


def _draw_card(theme: Theme, sheet: Sheet, study: Study, drawn: Drawn) -> Card | None:
    if sheet.file.is_page or study.article is None:
        return None
    taken = {*study.files, *_downloads(drawn)}
    return make_card(sheet.site, study.article.front, drawn.charts, theme.colours, taken)


def _render(theme: Theme, sheet: Sheet, article: Article, drawn: Drawn, card: Card | None) -> str:
    if not sheet.file.is_page:
        return theme.render_article(_article_view(sheet, article, drawn, card))
    title = article.front.title
    return theme.render_page(PageView(sheet.site, title, drawn.body, drawn.charts, drawn.glyphs))


def _article_view(sheet: Sheet, article: Article, drawn: Drawn, card: Card | None) -> ArticleView:
    front = article.front
    return ArticleView(
        site=sheet.site,
        slug=sheet.file.slug,
        front=front,
        body=drawn.body,
        headings=article.headings,
        charts=drawn.charts,
        plan=drawn.plan,
        glyphs=drawn.glyphs,
        moments=moment_links(drawn.video, front.moments),
        recording=recording_view(drawn.video),
        card=None if card is None else card.view,
        earlier=sheet.earlier,
        later=sheet.later,
        draft=sheet.draft,
    )


def _write(folder: Path, html: str, page: MadePage) -> None:
    """Write a page with the files that it uses and its downloads into its folder."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / INDEX).write_text(html, encoding="utf-8", newline="\n")
    for name, path in page.attachments.items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, target)
    for name, data in page.files.items():
        (folder / name).write_bytes(data)


def _downloads(drawn: Drawn) -> Mapping[str, bytes]:
    files: dict[str, bytes] = {}
    for view in drawn.charts:
        if view.drawing is not None:
            files |= view.drawing.files
    return files
