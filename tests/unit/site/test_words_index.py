"""The index of words is made when words change, and stays when they do not."""

import sys
from pathlib import Path

import pytest

from sitegen.site.pressing import Press
from sitegen.site.words_index import WORDS, WordsError, index_words

PAGE = '<html lang="en"><main><h1>{}</h1><p>{}</p></main></html>'


@pytest.fixture
def press(tmp_path: Path) -> Press:
    top, old = tmp_path / "fresh", tmp_path / "old"
    for slug in ("one", "two"):
        (top / slug).mkdir(parents=True)
        words = PAGE.format(slug, "A line that falls.")
        (top / slug / "index.html").write_text(words, encoding="utf-8")
    return Press(top, old, tmp_path, ("", ""), (), cache=tmp_path / "cache")


def times(press: Press) -> dict[str, int]:
    found = (path for path in (press.top / WORDS).rglob("*") if path.is_file())
    return {str(path.relative_to(press.top)): path.stat().st_mtime_ns for path in found}


def publish(press: Press) -> None:
    """Have what was made stand where the published folder is, and the pages be made anew."""
    press.top.rename(press.old)
    for slug in ("one", "two"):
        (press.top / slug).mkdir(parents=True)
        (press.top / slug / "index.html").hardlink_to(press.old / slug / "index.html")


def test_an_index_is_made_without_what_this_site_does_not_use(press: Press) -> None:
    mark = index_words(press, ["one/", "two/"], "")
    assert mark
    names = {path.name for path in (press.top / WORDS).iterdir()}
    assert {"pagefind.js", "pagefind-entry.json", "fragment", "index"} <= names
    assert not any("ui" in name or "highlight" in name for name in names)


def test_the_same_words_leave_the_published_index_as_it_is(press: Press) -> None:
    mark = index_words(press, ["one/", "two/"], "")
    before = times(press)
    publish(press)
    assert index_words(press, ["two/", "one/"], mark) == mark
    assert times(press) == before


@pytest.mark.parametrize("kept", [True, False])
def test_other_words_make_another(press: Press, *, kept: bool) -> None:
    mark = index_words(press, ["one/", "two/"], "")
    publish(press)
    page = press.top / "one" / "index.html"
    page.unlink()
    page.write_text(PAGE.format("one", "A line that rises."), encoding="utf-8")
    if not kept:
        press = Press(press.top, press.old, press.theme, press.state, ())
    assert index_words(press, ["one/", "two/"], mark) != mark
    assert (press.top / WORDS / "pagefind.js").is_file()


def test_a_lost_index_is_made_again(press: Press) -> None:
    mark = index_words(press, ["one/"], "")
    assert index_words(press, ["one/"], mark) == mark
    assert (press.top / WORDS / "pagefind.js").is_file()


def test_without_words_there_is_no_index(press: Press) -> None:
    assert index_words(press, [], "") == ""
    assert not (press.top / WORDS).exists()


def test_what_went_wrong_is_told(press: Press, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "executable", "/bin/false")
    with pytest.raises(WordsError, match="could not be made"):
        index_words(press, ["one/"], "")
