"""What the rest of a site must know of each write-up and page."""

from dataclasses import dataclass, field, replace

from sitegen.article import FrontMatter, load_source, read_article_front, read_page_front
from sitegen.article.front_reader import ReadFront
from sitegen.diagnostics import Diagnostic
from sitegen.finding import Entry, NamedAnalysis, make_entry
from sitegen.kinds.kind import ChartKind
from sitegen.site.bug import Bug, attempt
from sitegen.site.content import ContentFile, shown, unreadable
from sitegen.site.links import linked_pages
from sitegen.site.rights import find_missing_rights, quoted_in
from sitegen.site.study import StudiedChart, Study, study_file
from sitegen.source import Source


@dataclass(frozen=True)
class Survey:
    """A write-up or page as far as others are concerned; `front_text` is its front matter's text.

    `front` is None when the file cannot be read. `linked` are the addresses of the pages that its
    links seem to lead to. `entry` is what it can be found by, nothing for one that has errors.
    """

    file: ContentFile
    front: FrontMatter | None
    front_text: str
    charts: int = 0
    diagnostics: tuple[Diagnostic, ...] = ()
    bugs: tuple[Bug, ...] = ()
    linked: tuple[str, ...] = ()
    entry: Entry = field(default=Entry())

    @property
    def is_draft(self) -> bool:
        """True when the author says that the write-up is not yet to be published."""
        is_article = self.front is not None and not self.file.is_page
        return is_article and self.front is not None and self.front.status == "draft"

    @property
    def is_good(self) -> bool:
        """True when the write-up can be published."""
        return not self.bugs and not any(found.is_error for found in self.diagnostics)


def look_at_front(file: ContentFile) -> Survey:
    """Return what a file's front matter alone tells, for a first plan of the site."""
    name = shown(file.path)
    bugs: list[Bug] = []
    try:
        source, _ = load_source(file.read(), name)
    except OSError as wrong:
        return Survey(file, None, "", diagnostics=(unreadable(file.path, wrong),))
    found = attempt(bugs, f"reading {name}", read_front, file, source)
    if found is None:
        return Survey(file, None, "", bugs=tuple(bugs))
    return Survey(file, found.front, found.text, diagnostics=found.diagnostics)


def read_front(file: ContentFile, source: Source) -> ReadFront:
    """Return the front matter of a file, whose text is `source`, by what its kind of page has."""
    return read_page_front(source) if file.is_page else read_article_front(source)


def survey_file(file: ContentFile, kinds: tuple[ChartKind, ...], *, strict: bool) -> Survey:
    """Return what the other pages need to know of a write-up or page."""
    return survey_of(study_file(file, kinds), strict=strict)


def survey_of(study: Study, *, strict: bool) -> Survey:
    """Return what the other pages need to know of what was studied."""
    article = study.article
    diagnostics = study.diagnostics
    if article is not None and not study.file.is_page:
        diagnostics += find_missing_rights(article, quoted_in(study))
    survey = Survey(
        study.file,
        None if article is None else article.front,
        "" if article is None else article.front_text,
        len(study.charts),
        tuple(found.strict() if strict else found for found in diagnostics),
        study.bugs,
        () if article is None else linked_pages(study.file, article),
    )
    if study.file.is_page or not survey.is_good:
        return survey
    bugs: list[Bug] = []
    doing = f"filing {study.name}"
    entry = attempt(bugs, doing, make_entry, [_named(chart) for chart in study.charts])
    return replace(survey, bugs=tuple(bugs), entry=entry or Entry())


def _named(chart: StudiedChart) -> NamedAnalysis:
    named, analysis = chart.named, chart.analysis
    title, kind = named.chart.reading.title, named.chart.kind.name
    if analysis is None:
        return NamedAnalysis(named.anchor, named.name, title, kind, None)
    return NamedAnalysis(
        named.anchor, named.name, title, kind, analysis.value, analysis.facts, named.id
    )
