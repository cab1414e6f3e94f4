"""Any text at all can stand in a fence: readers answer with faults, never with an exception."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.charts.defaults import SongDefaults
from sitegen.kinds import KINDS, ChartKind
from sitegen.source import Passage

PIECES = st.sampled_from(
    [
        "count | 1 & 2 & 3 & 4 & |",
        "voice | C4  D4  E4      |",
        "words | one two three   |",
        "chord | C       G7      |",
        "guitar",
        "  e   | 0---3h--5b7-----|",
        "drums",
        "  HH  | x---o---X---f---|",
        "meter: 7/8",
        "key: F# minor",
        "| C / G . | % :|",
        "Verse | 8 | 0:12",
        "",
    ]
)
LINES = st.lists(st.one_of(PIECES, st.text(max_size=30)), max_size=12).map("\n".join)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
@given(text=LINES)
@settings(max_examples=200, deadline=None)
def test_any_text_is_read(kind: ChartKind, text: str) -> None:
    passage = Passage.of(text)
    reading = kind.read(passage, SongDefaults())
    for diagnostic in reading.diagnostics:
        assert 1 <= diagnostic.span.line <= len(passage.source.lines)
        line = passage.source.lines[diagnostic.span.line - 1]
        assert 1 <= diagnostic.span.column <= len(line) + 1
