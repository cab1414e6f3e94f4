"""What is quoted is counted, and what is missing is said, without ruling on anything."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli import sitegen
from sitegen.kinds import KINDS
from sitegen.site.content import scan_content
from sitegen.site.rights import Quoted, find_missing_rights, quoted_in, quoted_words, rights_line
from sitegen.site.study import Study, study_file

WriteArticle = Callable[..., Path]
NOTES = """\
```notation
id: {id}
meter: 4/4
{head}

count | 1   2   3   4   | 1   2   3   4   |
voice | C5  D5  E5  r   | C5  D5  E5  r   |
```
"""
OTHERS = """\
```changes
key: C

| C | F | G | C |
```

```form
meter: 4/4

Verse | 16
Coda  | 4
```
"""
HOLDER = "rights:\n  holder: The Gantry\n"
SOURCES = "sources:\n  - who: The drummer\n    what: counted it in\n"


@pytest.fixture
def study(write_article: WriteArticle, content: Path) -> Callable[..., Study]:
    def write(words: str, more: str = "", status: str = "published") -> Study:
        write_article("one", words, status=status, more=more)
        (file,) = scan_content(content).articles
        return study_file(file, KINDS)

    return write


def test_bars_in_notation_are_counted_against_the_plan(study: Callable[..., Study]) -> None:
    notes = NOTES.format(id="a", head="") + "\n" + NOTES.format(id="b", head="")
    quoted = quoted_in(study(f"{notes}\n{OTHERS}", HOLDER + SOURCES))
    assert (quoted.bars, quoted.all_bars, quoted.share) == (4, Fraction(20), Fraction(1, 5))
    assert (quoted.holder, quoted.sources) == ("The Gantry", 1)
    said = "4 bars of the song are quoted here in notation, 20 % of the song by its plan."
    assert quoted_words(quoted) == said


def test_bars_of_the_same_moment_count_once(study: Callable[..., Study]) -> None:
    # At 120 a bar of 4/4 lasts 2 s: bars at 0:10 and 0:12, and again from 0:12 on.
    heads = ("tempo: 120\nat: 0:10", "tempo: 120\nat: 0:12", "tempo: 120\nat: 0:40")
    notes = "\n".join(NOTES.format(id=f"n{n}", head=head) for n, head in enumerate(heads))
    assert quoted_in(study(notes)).bars == 5


def test_without_notes_nothing_is_said(study: Callable[..., Study]) -> None:
    found = study(OTHERS)
    quoted = quoted_in(found)
    assert quoted.bars == 0
    assert quoted_words(quoted) == ""
    assert found.article is not None
    assert find_missing_rights(found.article, quoted) == ()


@pytest.mark.parametrize(
    ("more", "status", "codes"),
    [
        ("", "published", ["rights-holder", "sources-missing"]),
        (HOLDER, "published", ["sources-missing"]),
        (SOURCES, "published", ["rights-holder"]),
        (HOLDER + SOURCES, "published", []),
        ("", "draft", []),
    ],
)
def test_what_is_missing_is_said_once_it_is_published(
    study: Callable[..., Study], more: str, status: str, codes: list[str]
) -> None:
    found = study(NOTES.format(id="a", head=""), more, status)
    assert found.article is not None
    faults = find_missing_rights(found.article, quoted_in(found))
    assert [one.code for one in faults] == codes
    for one in faults:
        if one.code == "rights-holder":
            assert "licensed adviser" in one.hint
            assert "no number of bars is safe by itself" in one.hint


def test_more_than_the_whole_song_is_the_whole_song() -> None:
    quoted = Quoted(12, 8, "", "for study", 0)  # type: ignore[arg-type]
    assert quoted.share == 1
    said = "one: 12 bars of 8 (100 %) in notation; no holder named; 0 sources; for study"
    assert rights_line("one", quoted) == said


@pytest.mark.usefixtures("study")
def test_the_ledger_is_printed(write_article: WriteArticle) -> None:
    write_article("one", NOTES.format(id="a", head=""), more=HOLDER + SOURCES)
    run = CliRunner().invoke(sitegen, ["check", "--rights"])
    assert run.output.splitlines() == [
        "content/breakdowns/one/article.md: 2 bars in notation; The Gantry; 1 source",
        "No number of bars is safe by itself: ask a licensed adviser where you publish.",
    ]
    run = CliRunner().invoke(sitegen, ["check", "--rights", "--format", "json"])
    assert '"bars": 2' in run.output
