"""Text made to take time, room or the reader in: told at a place, within a bound, or let through.

No clock is read: each of these took minutes or hours where a step's time grew by the square of
the text, and the test would not end.
"""

import re

import pytest
from html5lib import parseFragment

from sitegen.article import load_source, read_article, render_body
from sitegen.article.decoding import MOST_MARKS, MOST_TOLD
from sitegen.article.links import MOST_OF_ADDRESSES
from sitegen.article.markdown import LONGEST_BLOCK, MOST_BRACKETS
from sitegen.diagnostics import Diagnostic, did_you_mean
from sitegen.source import Line, Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"
MANY = 60_000


def faults(text: str, front: str = FRONT) -> tuple[Diagnostic, ...]:
    return read_article(Source("a.md", front + text), ("changes",))[1]


def codes(text: str, front: str = FRONT) -> set[str]:
    return {fault.code for fault in faults(text, front)}


@pytest.mark.parametrize(
    "text",
    ["[" * MANY, "![[" * MANY, "^[" * MANY, "[a](" * MANY, "[^" * MANY, "*a **b " * MANY,
     "`a" * MANY, "<a b='" * MANY, "a\n" * MANY, "{chord " * MANY],
)  # fmt: skip
def test_an_endless_paragraph_is_a_fault(text: str) -> None:
    assert "text-long" in codes(text)


def test_the_bounds_are_where_they_are_said_to_be() -> None:
    assert codes("a" * LONGEST_BLOCK) == set()
    assert codes("a" * (LONGEST_BLOCK + 1)) == {"text-long"}
    assert codes("[" * MOST_BRACKETS) == set()
    assert codes("[" * (MOST_BRACKETS + 1)) == {"text-long"}


def test_an_endless_paragraph_is_told_where_it_begins() -> None:
    (fault,) = faults("\nOne.\n\n" + "x" * MANY)

    assert (fault.span.line, fault.span.column) == (7, 1)


def test_elements_closed_in_the_wrong_order_are_counted_quickly() -> None:
    assert codes("<div>\n\n" * 9000 + "</p>\n\n" * 9000) == {"html-open"}


def test_elements_are_matched_by_name() -> None:
    assert codes("<div><em><b></em></b></div>") == {"html-open"}
    assert codes("<div><em><b></b></em></div>") == set()


def test_headings_of_one_name_get_different_anchors() -> None:
    article, _ = read_article(Source("a.md", FRONT + "## A\n\n## A 2\n\n" + "## A\n\n" * 9000), ())
    anchors = [heading.anchor for heading in article.headings]

    assert anchors[:4] == ["a", "a-2", "a-3", "a-4"]
    assert len(set(anchors)) == len(anchors)


def test_a_table_is_named_after_the_heading_above_it() -> None:
    table = "a | b\n--|--\n1 | 2\n\n"
    text = FRONT + table + "## One\n\n" + table * 2000 + "## Two\n\n" + table
    article, _ = read_article(Source("a.md", text), ())

    page = render_body(article, lambda _: "", lambda _: "")

    assert page.count('aria-label="Table"') == 1
    assert page.count('aria-label="Table: One"') == 2000
    assert page.count('aria-label="Table: Two"') == 1


def test_a_pile_of_marks_is_a_fault_in_its_place() -> None:
    marks = "\u0301\u0323" * 4000
    (fault,) = faults(f"ae{marks}b")

    assert fault.code == "text-marks"
    assert fault.span == Span(4, 3 + MOST_MARKS, 4, 3 + len(marks))
    assert codes(f"ae{marks[:MOST_MARKS]}b") == set()


def test_a_line_with_many_marks_is_placed_letter_by_letter() -> None:
    line = Line.cut("e\u0301" * 9000 + "X", 1)

    assert line.text == "é" * 9000 + "X"
    assert line.columns[:3] == (1, 3, 5)
    assert line.span(9000, 9001) == Span(1, 18001, 1, 18002)


def test_letters_that_melt_without_a_mark_are_placed_together() -> None:
    line = Line.cut("\u1112\u1161\u11ab\u1112\u1161X", 1)  # Hangul, Unicode Standard 3.12

    assert line.text == "한하X"
    assert line.columns == (1, 4, 6, 7)


@pytest.mark.parametrize("data", [b"\0" * MANY, b"\xff" * MANY])
def test_a_stretch_that_is_no_text_is_one_fault(data: bytes) -> None:
    _, found = load_source(data, "a.md")

    assert [fault.span for fault in found] in ([Span(1, 1, 1, MANY + 1)], [Span(1, 1, 1, 2)])


@pytest.mark.parametrize("data", [b"a\0" * MANY, b"a\xff" * MANY])
def test_of_very_many_faults_of_the_bytes_the_first_are_told(data: bytes) -> None:
    assert len(load_source(data, "a.md")[1]) == MOST_TOLD


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_wide_text_is_read_and_told_once(encoding: str) -> None:
    text = f"\ufeff{FRONT}\r\nIt ends on A♭.\r\n"
    source, (fault,) = load_source(text.encode(encoding), "a.md")

    assert source.text == f"{FRONT}\nIt ends on A♭.\n"
    assert (fault.code, fault.span.line) == ("text-bytes", 1)


def test_a_sign_that_turns_letters_around_is_a_fault() -> None:
    (fault,) = faults("from \u202ereverse")

    assert (fault.code, fault.span) == ("text-control", Span(4, 6, 4, 7))
    assert codes("שיר, café, \u200f!") == set()


@pytest.mark.parametrize("typed", ["\\ud800", "\\0", "\\x07", "\\e[2J", "\\u202e", "\\x9b"])
def test_a_number_in_quotes_hides_no_control_character(typed: str) -> None:
    article, found = read_article(Source("a.md", f'---\ntitle: "a{typed}"\n---\n'), ())

    assert {fault.code for fault in found} <= {"text-control", "front-syntax", "front-title"}
    assert found
    article.front.title.encode()
    assert all(char.isprintable() for char in article.front.title)


def test_yaml_that_refers_to_itself_grows_no_further() -> None:
    lines = ["a: &a [ha, ha]"]
    lines += [f"{b}: &{b} [*{a}, *{a}, *{a}]" for a, b in zip("abcdefgh", "bcdefghi", strict=True)]
    front = "\n".join(["---", "title: Low Tide", *lines, "---", ""])

    assert codes("", front) == {"front-field", "front-syntax"}


def test_no_word_is_looked_for_among_very_many() -> None:
    assert did_you_mean("word", [f"word{n}" for n in range(9000)]) == ""
    assert did_you_mean("w" * 9000, ["w" * 8999]) == ""


@pytest.mark.parametrize(
    "html",
    ["<a href='java&#9;script:x'>a</a>", "<a href='&Tab;javascript:x'>a</a>",
     "<a href='javascript&colon;x'>a</a>", "<a href=&#106avascript:x>a</a>",
     "<A HREF='JAVASCRIPT:x'>a</A>", "<p/onclick=x>a</p>", "<p\fonclick=x>a</p>",
     "<p a='>' onclick=x>a</p>", "<p a=\"'\" onclick='x'>a</p>", "<scr\u0131pt>x</scr\u0131pt>",
     "<a href='data:text/html,x'>a</a>", "<svg/onload=x>", "<math><a xlink:href='javascript:x'>",
     "<!--><script>x</script>-->", "<!-- --!><script>x</script> -->", "<![CDATA[<script>]]>",
     "<?x <script>x</script> ?>", "<!x <script>x</script>>", "<p onclick\n=x>a</p>"],
)  # fmt: skip
def test_html_that_runs_something_comes_through_in_no_disguise(html: str) -> None:
    article, _ = read_article(Source("a.md", f"{FRONT}\n{html}\n\nSo {html}\n"), ())
    page = parseFragment(render_body(article, lambda _: "", lambda _: ""), treebuilder="lxml")
    elements = [node for root in page if not isinstance(root, str) for node in root.iter()]
    elements = [node for node in elements if isinstance(node.tag, str)]

    assert elements
    for element in elements:
        assert element.tag.rpartition("}")[2] not in {"script", "svg", "math"}
        for name, value in element.items():
            assert not name.startswith("on")
            assert not re.sub(r"\s", "", value).lower().startswith(("javascript:", "data:"))


@pytest.mark.parametrize("mark", ["", "!"])
def test_a_long_address_is_not_repeated_without_end(mark: str) -> None:
    address = f"[a]: /{'x' * 8999}\n\n"
    often = MOST_OF_ADDRESSES // 9000

    assert "text-long" not in codes(address + f"{mark}[a]\n\n" * often)

    article, found = read_article(
        Source("a.md", FRONT + address + f"{mark}[a]\n\n" * often * 20), ()
    )
    (fault,) = (one for one in found if one.code == "text-long")
    assert fault.span.line == 6 + 2 * often
    assert len(render_body(article, lambda _: "", lambda _: "")) < 2 * MOST_OF_ADDRESSES
