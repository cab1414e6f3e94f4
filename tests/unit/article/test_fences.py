"""Chart blocks keep the places of their lines, wherever in the text they stand."""

import unicodedata

import pytest

from sitegen.article import Article, read_article
from sitegen.diagnostics import Diagnostic
from sitegen.source import Source, Span

NAMES = ("notation", "changes")
FRONT = "---\ntitle: Low Tide\n---\n"


def read(body: str) -> tuple[Article, tuple[Diagnostic, ...]]:
    return read_article(Source("a.md", FRONT + body), NAMES)


def starts(article: Article) -> list[tuple[str, int, int]]:
    """Return each line of the first fence with the file's line and column of its start."""
    lines = article.fences[0].passage.lines
    return [(line.text, line.number, line.columns[0]) for line in lines]


def test_a_chart_knows_its_name_and_its_lines() -> None:
    article, faults = read("Text.\n\n```notation\nid: a\n\ncount | 1 |\n```\n")

    fence = article.fences[0]
    assert faults == ()
    assert (fence.name, fence.info, fence.span) == ("notation", "", Span(6, 4, 6, 12))
    assert fence.passage.opening == Span(6, 1, 6, 12)
    assert starts(article) == [("id: a", 7, 1), ("", 8, 1), ("count | 1 |", 9, 1)]
    assert fence.passage.source.path == "a.md"


@pytest.mark.parametrize(
    ("body", "name_span", "lines"),
    [
        ("  ```notation\n  id: a\n   b\nc\n  ```\n", (4, 6),
         [("id: a", 5, 3), (" b", 6, 3), ("c", 7, 1)]),
        ("~~~~  notation\nid: a\n~~~\n~~~~\n", (4, 7), [("id: a", 5, 1), ("~~~", 6, 1)]),
        ("> ```notation\n> id: a\n>b\n> ```\n", (4, 6), [("id: a", 5, 3), ("b", 6, 2)]),
        ("- ```notation\n  id: a\n    b\n  ```\n", (4, 6), [("id: a", 5, 3), ("  b", 6, 3)]),
        ("10. ```notation\n    id: a\n\n    b\n    ```\n", (4, 8),
         [("id: a", 5, 5), ("", 6, 1), ("b", 7, 5)]),
        ("> - > ```notation\n>   > id: a\n>   > ```\n", (4, 10), [("id: a", 5, 7)]),
        ("- a\n\n  > 1. ```notation\n  >    id: a\n  >\n  >    b\n  >    ```\n", (6, 11),
         [("id: a", 7, 8), ("", 8, 4), ("b", 9, 8)]),
        ("-\t```notation\n\tid: a\n\t  b\n\t```\n", (4, 6), [("id: a", 5, 2), ("  b", 6, 2)]),
        ("- - ```notation\n\tid: a\n\t```\n", (4, 8), [("id: a", 5, 2)]),
        (">\t```notation\n>\tid: a\n>\t```\n", (4, 6), [("id: a", 5, 3)]),
        ("[^1]\n\n[^1]: Text.\n\n    ```notation\n    id: a\n    ```\n", (8, 8),
         [("id: a", 9, 5)]),
    ],
)  # fmt: skip
def test_places_are_the_files_own(
    body: str, name_span: tuple[int, int], lines: list[tuple[str, int, int]]
) -> None:
    article, faults = read(body)

    assert faults == ()
    line, column = name_span
    assert article.fences[0].span == Span(line, column, line, column + len("notation"))
    assert starts(article) == lines


def test_part_of_a_tab_that_belongs_to_the_block_has_the_tabs_place() -> None:
    article, _ = read("- ```notation\n\tid: a\n  ```\n")

    line = article.fences[0].passage.lines[0]
    assert line.text == "  id: a"
    assert line.columns == (1, 1, 2, 3, 4, 5, 6, 7)


def test_columns_count_stored_code_points_where_the_text_is_composed() -> None:
    stored = unicodedata.normalize("NFD", "> wörds | é a")
    article, _ = read(f"> ```notation\n{stored}\n> ```\n")

    line = article.fences[0].passage.lines[0]
    assert line.text == "wörds | é a"
    assert line.columns[:3] == (3, 4, 6)
    assert line.span(10, 11) == Span(5, len(stored), 5, len(stored) + 1)


@pytest.mark.parametrize("opening", ["```", "```text", "~~~ text", "``` text"])
def test_plain_text_is_no_chart(opening: str) -> None:
    article, faults = read(f"{opening}\n{{chord G}}\n{opening[:3]}\n")

    assert (article.fences, article.roles, faults) == ((), (), ())


@pytest.mark.parametrize(
    ("name", "hint"), [("notatoin", 'did you mean "notation"?'), ("zzz", "known are: changes, ")]
)
def test_an_unknown_name_is_told(name: str, hint: str) -> None:
    article, faults = read(f"> ```{name}\n> id: a\n> ```\n")

    assert [(fault.code, fault.span) for fault in faults] == [
        ("block-name", Span(4, 6, 4, 6 + len(name)))
    ]
    assert faults[0].hint.startswith(hint)
    assert "plain text opens with text" in faults[0].hint
    assert article.fences == ()


def test_more_than_the_name_is_told() -> None:
    article, faults = read("```notation  id=a b \n```\n")

    assert [(fault.code, fault.span) for fault in faults] == [("block-name", Span(4, 14, 4, 20))]
    assert (article.fences[0].name, article.fences[0].info) == ("notation", "id=a b")


@pytest.mark.parametrize(
    ("body", "opening"),
    [
        ("```notation\nid: a\n", Span(4, 1, 4, 12)),
        ("```notation", Span(4, 1, 4, 12)),
        ("> ```notation\n> id: a\n\nText.\n", Span(4, 3, 4, 14)),
        ("- ```notation\n  id: a\nText.\n", Span(4, 3, 4, 14)),
        ("~~~\na\n```\n", Span(4, 1, 4, 4)),
        ("````notation\na\n```\n", Span(4, 1, 4, 13)),
    ],
)
def test_a_block_that_is_not_closed_is_told_at_its_opening(body: str, opening: Span) -> None:
    _, faults = read(body)

    assert [(fault.code, fault.span) for fault in faults] == [("block-open", opening)]


def test_a_chart_that_is_not_closed_is_read_to_its_end() -> None:
    article, _ = read("```notation\nid: a\n\nb")

    assert starts(article) == [("id: a", 5, 1), ("", 6, 1), ("b", 7, 1)]


def test_indented_text_is_plain() -> None:
    article, faults = read("Text.\n\n    ```notation\n    id: a\n    ```\n")

    assert (article.fences, faults) == ((), ())


def test_blocks_too_deep_to_be_read_are_told() -> None:
    depth = 70
    article, faults = read("> " * depth + "```notation\n")

    assert [fault.code for fault in faults] == ["nesting"]
    assert article.fences == ()
