"""Write-ups that are filed as the site files them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.finding import Entry
from sitegen.kinds import KINDS
from sitegen.site.content import scan_content
from sitegen.site.study import study_file
from sitegen.site.survey import survey_of

FileWriteUp = Callable[[str], Entry]


@pytest.fixture
def file_write_up(tmp_path: Path) -> FileWriteUp:
    """Return what files a write-up by the text below its front matter, which must be good."""
    (tmp_path / "site.toml").write_text('title = "Side Two"\n', encoding="utf-8")
    place = tmp_path / "breakdowns" / "one"
    place.mkdir(parents=True)

    def file(text: str) -> Entry:
        head = "---\ntitle: One\nsummary: Made for a test.\nstatus: published\n---\n\n"
        (place / "article.md").write_text(head + text, encoding="utf-8")
        (found,) = scan_content(tmp_path).articles
        survey = survey_of(study_file(found, KINDS), strict=False)
        assert survey.is_good, survey.diagnostics
        return survey.entry

    return file
