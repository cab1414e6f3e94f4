"""One build of a site: its settings, then an edition in a fresh folder, swapped in whole."""

import time
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from sitegen.diagnostics import Diagnostic, ordered
from sitegen.engraving.style import NOTATION_STYLE
from sitegen.pages.theme import load_theme
from sitegen.site.bug import Bug
from sitegen.site.content import (
    ARTICLES_FOLDER,
    PAGES_FOLDER,
    Content,
    is_inside,
    scan_content,
    shown,
)
from sitegen.site.edition import Edition, Step
from sitegen.site.materials import gather, keep
from sitegen.site.order import Order
from sitegen.site.pressing import Press
from sitegen.site.publishing import check_target, fresh_folder
from sitegen.site.refusal import RefusedError
from sitegen.site.settings import SettingsFile
from sitegen.site.site_file import load_settings
from sitegen.site.tally import counted, fault_words
from sitegen.site.theme_folder import asked_theme, check_theme, find_theme
from sitegen.site.workforce import Workforce


@dataclass(frozen=True)
class Report:
    """What came of a build.

    `kept` are the write-ups and pages whose last good page was kept, `missing` those that are
    not on the site at all; `drafts` counts the drafts left out. `unkept` says why the next build
    finds nothing kept of this one, "" where it does. `out` is None where nothing was
    published.
    """

    pages: int = 0
    charts: int = 0
    diagnostics: tuple[Diagnostic, ...] = ()
    bugs: tuple[Bug, ...] = ()
    kept: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    drafts: int = 0
    seconds: float = 0
    unkept: str = ""
    out: Path | None = None

    def summary(self) -> str:
        """Return a line of figures, and one each for what was kept, missing or left out."""
        first, *rest = self.summary_without_time().split("\n")
        return "\n".join((f"{first}, {self.seconds:.1f} s", *rest))

    def summary_without_time(self) -> str:
        """Return the same lines with nothing that differs from one build to the next."""
        lines = [self._figures()]
        if self.kept:
            lines.append(f"kept as last published: {', '.join(self.kept)}")
        if self.missing:
            lines.append(f"not on the site: {', '.join(self.missing)}")
        if self.drafts:
            lines.append(f"{counted(self.drafts, 'draft')} left out; --drafts builds them")
        if self.unkept:
            lines.append(f"nothing is kept for the next build: {self.unkept}")
        if self.out is None:
            lines.append("nothing was published")
        return "\n".join(lines)

    def _figures(self) -> str:
        made = f"{counted(self.pages, 'page')}, {counted(self.charts, 'chart')}"
        where = f" in {shown(self.out)}" if self.out else ""
        return f"{made}{where}: {fault_words(self.diagnostics, len(self.bugs))}"


def build_site(order: Order, step: Step) -> Report:
    """Build the site and return what came of it; the fault of one write-up stops no other.

    Raises RefusedError when the theme is unknown or the output folder must not be written.
    Nothing is published while the settings have an error, or a folder of write-ups or pages cannot
    be read: what is published would lose the pages that it holds.
    """
    began = time.monotonic()
    content = scan_content(order.content)
    settings = load_settings(content)
    theme = _load_theme(order, settings, content)
    _check_out(order, content)
    faults = _weighed((*content.diagnostics, *settings.diagnostics), order)
    is_refused = not content.is_known or any(found.is_error for found in settings.diagnostics)
    if theme is None or is_refused:
        return Report(diagnostics=faults, seconds=time.monotonic() - began)
    with (
        fresh_folder(order.out, force=order.force) as fresh,
        Workforce(order.jobs) as work,
    ):
        folder, state = theme
        materials = gather(order, content, folder)
        cache, mark = order.cache, materials.mark
        press = Press(fresh, order.out, folder, state, order.kinds, order.strict, cache, mark)
        edition = Edition(content, settings.settings, press, work, step, materials)
        edition.make(drafts=order.drafts)
    listed = (*edition.articles, *edition.pages)
    report = Report(
        pages=len(listed) + 1,
        charts=sum(one.charts for one in listed),
        diagnostics=_weighed((*faults, *edition.diagnostics), order),
        bugs=tuple(edition.bugs),
        kept=tuple(shown(one.file.path) for one in listed if one.is_kept),
        missing=tuple(shown(file.path) for file in edition.missing),
        drafts=edition.drafts,
        seconds=time.monotonic() - began,
        out=order.out,
    )
    return replace(report, unkept=keep(order, materials, edition.records, report))


def _weighed(diagnostics: Iterable[Diagnostic], order: Order) -> tuple[Diagnostic, ...]:
    return ordered(found.strict() if order.strict else found for found in diagnostics)


def _load_theme(
    order: Order, settings: SettingsFile, content: Content
) -> tuple[Path, tuple[str, str]] | None:
    """Return the theme's folder and the addresses of its styles and scripts.

    None when the settings name no theme that there is, which is a fault of theirs.
    """
    if order.theme is None:
        folder = find_theme(settings.settings.theme, content.folder)
    else:
        folder = asked_theme(order.theme)
    if folder is None:
        return None
    check_theme(folder)
    try:
        theme = load_theme(folder, NOTATION_STYLE)
    except FileNotFoundError as wrong:
        raise RefusedError(str(wrong)) from wrong
    return folder, (theme.stylesheet, theme.script)


def _check_out(order: Order, content: Content) -> None:
    """Raise RefusedError when `out` is in the way of the content or of somebody's files."""
    out = order.out
    if is_inside(content.folder, out):
        raise RefusedError(f"{out} holds the content itself: choose another --out")
    check_target(out, force=order.force)
    for room in (ARTICLES_FOLDER, PAGES_FOLDER):
        if is_inside(out, content.folder / room):
            raise RefusedError(f"{out} lies among the write-ups: choose another --out")
