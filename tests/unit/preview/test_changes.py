"""What a saved path means for the site."""

from pathlib import Path

import pytest
from unit.preview.conftest import Write

from sitegen.preview.changes import Changes, Known, sort_changes
from sitegen.site.content import scan_content

TIDE = "breakdowns/low-tide/"


@pytest.fixture
def known(content: Path, theme: Path, write: Write) -> Known:
    """Return a site with one write-up and two pages."""
    write("low-tide")
    for name in ("about", "reading"):
        (content / "pages" / f"{name}.md").write_text("Words.", encoding="utf-8")
    found = scan_content(content)
    return Known.of(content, theme, (*found.articles, *found.pages))


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("breakdowns/low-tide/article.md", Changes({TIDE})),
        ("breakdowns/low-tide/stage.png", Changes({TIDE})),
        ("breakdowns/low-tide/takes/one.png", Changes({TIDE})),
        ("breakdowns/low-tide", Changes({TIDE}, files=True)),
        ("breakdowns/slack/article.md", Changes(files=True)),
        ("breakdowns/slack", Changes(files=True)),
        ("breakdowns", Changes(files=True)),
        ("pages/about.md", Changes({"about/"})),
        ("pages/new.md", Changes(files=True)),
        ("pages/face.png", Changes({"about/", "reading/"})),
        ("site.toml", Changes(settings=True)),
        ("notes.txt", Changes()),
        ("", Changes(files=True, settings=True)),
        ("../plain/pages/article.html", Changes(theme=True)),
        ("../elsewhere.md", Changes()),
    ],
)
def test_a_path_changes(known: Known, name: str, changes: Changes) -> None:
    path = Path(*(known.content / name).parts)
    if name.startswith("../"):
        path = known.content.parent / name.removeprefix("../")

    assert sort_changes([path], known) == changes


@pytest.mark.parametrize("name", ["breakdowns/low-tide/article.md", "pages/about.md"])
def test_a_text_that_is_gone_asks_to_look_for_files(known: Known, name: str) -> None:
    path = known.content / name
    path.unlink()

    assert sort_changes([path], known).files


def test_changes_add_up(known: Known) -> None:
    paths = [known.content / "site.toml", known.content / TIDE / "article.md"]

    assert sort_changes(paths, known) == Changes({TIDE}, settings=True)
