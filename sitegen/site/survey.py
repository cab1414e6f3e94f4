"""What a build must know of each write-up and page before it draws any: its first round."""

from dataclasses import dataclass

from sitegen.article import FrontMatter
from sitegen.diagnostics import Diagnostic
from sitegen.kinds.kind import ChartKind
from sitegen.site.bug import Bug
from sitegen.site.content import ContentFile
from sitegen.site.study import study_file


@dataclass(frozen=True)
class Survey:
    """A write-up or page as far as others are concerned; `front_text` is its front matter's text.

    `front` is None when the file cannot be read.
    """

    file: ContentFile
    front: FrontMatter | None
    front_text: str
    charts: int
    diagnostics: tuple[Diagnostic, ...]
    bugs: tuple[Bug, ...]

    @property
    def is_draft(self) -> bool:
        """True when the author says that the write-up is not yet to be published."""
        is_article = self.front is not None and not self.file.is_page
        return is_article and self.front is not None and self.front.status == "draft"

    @property
    def is_good(self) -> bool:
        """True when the write-up can be published."""
        return not self.bugs and not any(found.is_error for found in self.diagnostics)


def survey_file(file: ContentFile, kinds: tuple[ChartKind, ...], *, strict: bool) -> Survey:
    """Return what the other pages need to know of a write-up or page."""
    study = study_file(file, kinds)
    article = study.article
    return Survey(
        file,
        None if article is None else article.front,
        "" if article is None else article.front_text,
        len(study.charts),
        tuple(found.strict() if strict else found for found in study.diagnostics),
        study.bugs,
    )
