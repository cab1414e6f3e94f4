"""Places in a file: lines, code-point columns, passages cut out of lists and quotes."""

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from sitegen.source import Line, Passage, Source, Span


def test_a_span_counts_lines_and_code_points_from_one() -> None:
    source = Source("a.md", "one\ntwo 𝄞 E♭\n")
    start = source.text.index("E♭")
    assert source.span(start, start + 2) == Span(2, 7, 2, 9)


def test_a_line_cut_out_of_a_quote_knows_its_file_columns() -> None:
    line = Line.cut("count | 1", 7, column=5)
    assert line.span(8, 9) == Span(7, 13, 7, 14)


def test_a_decomposed_letter_counts_once_and_keeps_its_file_columns() -> None:
    stored = "e\u0301| 1"
    line = Line.cut(stored, 1)
    assert line.text == "\u00e9| 1"
    # The bar line is code point 2 of the text and column 3 of the file.
    assert line.span(1, 2) == Span(1, 3, 1, 4)


def test_a_passage_of_a_text_has_its_lines() -> None:
    passage = Passage.of("a\nb")
    assert passage.text == "a\nb"
    assert [line.number for line in passage.lines] == [1, 2]


@given(st.text(max_size=40).filter(lambda text: "\n" not in text))
def test_columns_fit_any_text(text: str) -> None:
    line = Line.cut(text, 1)
    assert line.text == unicodedata.normalize("NFC", text)
    assert len(line.columns) == len(line.text) + 1
    assert list(line.columns) == sorted(line.columns)
    assert line.columns[-1] == len(text) + 1


@given(st.text(max_size=60), st.integers(0, 80), st.integers(0, 80))
def test_a_span_lies_in_its_file(text: str, start: int, end: int) -> None:
    source = Source("a.md", text)
    span = source.span(start, end)
    assert 1 <= span.line <= span.end_line <= len(source.lines)
    assert 1 <= span.column <= len(source.lines[span.line - 1]) + 1
