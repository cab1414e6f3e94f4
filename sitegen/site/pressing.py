"""One write-up or page studied, drawn and written."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache, partial
from pathlib import Path

from sitegen.article import Article
from sitegen.engraving.style import NOTATION_STYLE
from sitegen.figures.incipit import INCIPIT
from sitegen.kinds.kind import ChartKind
from sitegen.pages.theme import Theme, load_theme
from sitegen.pages.views import ArticleView, Link, PageView, SiteView
from sitegen.site.addresses import INDEX
from sitegen.site.bug import Bug, attempt
from sitegen.site.cache import Cache
from sitegen.site.cards import Card, card_parts, make_card
from sitegen.site.content import ContentFile
from sitegen.site.drawing import Drawn, draw
from sitegen.site.incipits import incipit_parts, make_incipit
from sitegen.site.kept_drawings import KeptDrawings
from sitegen.site.moments import moment_links
from sitegen.site.recording import recording_view
from sitegen.site.rights import quoted_in, quoted_words
from sitegen.site.study import Study, study_file
from sitegen.site.survey import Survey, survey_of
from sitegen.site.theme_folder import check_theme
from sitegen.site.writing import Written, put_bytes, put_copy, written_files


@dataclass(frozen=True)
class Press:
    """What all pages of an edition share; it goes to the other processes.

    `top` is the folder that is filled, `old` the published one, `theme` the theme's; `state` are
    the theme's addresses for its styles and scripts, which name their very state. `cache` is the
    folder for drawn charts, None for none, and `mark` the state of the program.
    """

    top: Path
    old: Path
    theme: Path
    state: tuple[str, str]
    kinds: tuple[ChartKind, ...]
    strict: bool = False
    cache: Path | None = None
    mark: str = ""

    def load_theme(self) -> Theme:
        """Return the theme, loaded once a process for as long as it stays the same."""
        return load_once(self.theme, self.state)

    @property
    def kept(self) -> KeptDrawings | None:
        """The charts that were drawn before."""
        return None if self.cache is None else KeptDrawings(Cache(self.cache), self.mark)


@dataclass(frozen=True)
class Sheet:
    """One page to be made; its neighbours and `draft` matter to write-ups only."""

    file: ContentFile
    site: SiteView
    earlier: Link | None = None
    later: Link | None = None
    draft: bool = False


@lru_cache(maxsize=4)
def load_once(folder: Path, _state: tuple[str, str]) -> Theme:
    """Return the theme in a folder, loaded anew where its state is another one.

    Raises RefusedError where a file of it cannot be read.
    """
    check_theme(folder)
    return load_theme(folder, NOTATION_STYLE)


@dataclass(frozen=True)
class MadePage:
    """A page ready to be written.

    `files` are the page itself, its downloads and pictures by name: none where it could not be
    made. `attachments` are the author's files beside it by their path from its folder.
    """

    files: Mapping[str, bytes] = field(default_factory=dict)
    attachments: Mapping[str, Path] = field(default_factory=dict)
    bugs: tuple[Bug, ...] = ()


@dataclass(frozen=True)
class Pressed:
    """What came of a page: what it is to others, the failures of drawing it, what was written."""

    survey: Survey
    bugs: tuple[Bug, ...] = ()
    files: tuple[Written, ...] = ()


def press_sheet(sheet: Sheet, press: Press) -> Pressed:
    """Study one write-up or page and, where it is good, write its page with all that goes with it.

    Raises RefusedError when the system does not let us write.
    """
    study = study_file(sheet.file, press.kinds)
    survey = survey_of(study, strict=press.strict)
    if not survey.is_good:
        return Pressed(survey)
    page = make_page(sheet, study, press.load_theme(), press.kept)
    if not page.files or page.bugs:
        return Pressed(survey, page.bugs)
    _write(sheet.file.address, page, press)
    return Pressed(survey, files=written_files(press.top / sheet.file.address))


def make_page(
    sheet: Sheet,
    study: Study,
    theme: Theme,
    kept: KeptDrawings | None = None,
    *,
    shared: bool = True,
) -> MadePage:
    """Return the page of what was studied, drawn and set; nothing but drawings is written.

    A page that is not `shared` with others needs no card for link previews.
    """
    bugs = list(study.bugs)
    drawn = draw(study, theme, bugs, kept)
    if drawn is None or study.article is None:
        return MadePage(bugs=tuple(bugs))
    doing = f"drawing the card of {study.name}"
    given = (theme, sheet, study, drawn, kept)
    card = attempt(bugs, doing, _draw_card, *given) if shared else None
    doing = f"making the page of {study.name}"
    html = attempt(bugs, doing, _render, theme, sheet, study, drawn, card)
    if html is None:
        return MadePage(bugs=tuple(bugs))
    pictures = {} if card is None else {card.name: card.data}
    doing = f"drawing the opening of {study.name}"
    if not sheet.file.is_page and (found := attempt(bugs, doing, _draw_incipit, drawn, kept)):
        pictures[INCIPIT] = found
    files = {INDEX: html.encode(), **_downloads(drawn), **pictures}
    return MadePage(files, study.files, tuple(bugs))


def _draw_card(
    theme: Theme, sheet: Sheet, study: Study, drawn: Drawn, kept: KeptDrawings | None
) -> Card | None:
    if sheet.file.is_page or study.article is None:
        return None
    taken = {*study.files, *_downloads(drawn)}
    given = (sheet.site, study.article.front, drawn.charts, theme.colours, taken)
    if kept is None:
        return make_card(*given)
    return kept.keep(Card, card_parts(*given), partial(make_card, *given))


def _draw_incipit(drawn: Drawn, kept: KeptDrawings | None) -> bytes:
    if kept is None:
        return make_incipit(drawn.charts)
    return kept.keep(bytes, incipit_parts(drawn.charts), partial(make_incipit, drawn.charts))


def _render(theme: Theme, sheet: Sheet, study: Study, drawn: Drawn, card: Card | None) -> str:
    article = study.article
    if article is None:
        raise ValueError("what could not be read cannot be set")
    if not sheet.file.is_page:
        quoted = quoted_words(quoted_in(study))
        return theme.render_article(_article_view(sheet, article, drawn, card, quoted))
    title = article.front.title
    return theme.render_page(PageView(sheet.site, title, drawn.body, drawn.charts, drawn.glyphs))


def _article_view(
    sheet: Sheet, article: Article, drawn: Drawn, card: Card | None, quoted: str
) -> ArticleView:
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
        quoted=quoted,
    )


def _write(address: str, page: MadePage, press: Press) -> None:
    """Write a page with the files that it uses and its downloads into its folder."""
    fresh, old = press.top / address, press.old / address
    for name, data in page.files.items():
        put_bytes(fresh / name, data, old / name)
    for name, path in page.attachments.items():
        put_copy(fresh / name, path, old / name)


def _downloads(drawn: Drawn) -> Mapping[str, bytes]:
    files: dict[str, bytes] = {}
    for view in drawn.charts:
        if view.drawing is not None:
            files |= view.drawing.files
    return files
