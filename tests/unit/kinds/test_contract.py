"""What every chart kind keeps to, run with its own example."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from unit.kinds.files import defaults_of

from sitegen.kinds import KINDS, ChartKind
from sitegen.kinds.kind import Surroundings
from sitegen.source import Passage

# Signs that mean something in one chart or another, so that mutations meet the readers' branches.
SIGNS = list("|:()/.%&-~<>,!#b♭♯=_ \t\n0123456789xorhpgfABCDEFGHnv\u0301\x00")
EACH_KIND = pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)


def surroundings(passage: Passage) -> Surroundings:
    return Surroundings("example-1", "Example 1", source=passage.source)


@EACH_KIND
def test_the_example_reads_without_a_fault(kind: ChartKind) -> None:
    passage = Passage.of(kind.example)
    reading = kind.read(passage, defaults_of(kind))
    assert [d.message for d in reading.diagnostics] == []
    assert reading.id
    assert reading.title
    analysis = kind.analyse(reading.chart, surroundings(passage))
    assert [d.message for d in analysis.diagnostics] == []


@EACH_KIND
def test_the_record_is_plain_data_with_the_public_fields(kind: ChartKind) -> None:
    passage = Passage.of(kind.example)
    analysis = kind.analyse(kind.read(passage, defaults_of(kind)).chart, surroundings(passage))
    record = json.loads(json.dumps(analysis.record))
    assert {"id", "kind", "title", "key", "meter", "bars", "chords", "notes"} <= set(record)
    assert record["kind"] == kind.name
    assert analysis.facts


@EACH_KIND
def test_the_example_is_drawn_with_an_account_in_words(kind: ChartKind) -> None:
    passage = Passage.of(kind.example)
    around = surroundings(passage)
    drawing = kind.draw(kind.analyse(kind.read(passage, defaults_of(kind)).chart, around), around)
    assert drawing.piece
    assert drawing.summary.endswith(".")
    assert drawing.account
    assert all(bar.place and bar.sentences for bar in drawing.account)


@EACH_KIND
@given(data=st.data())
@settings(max_examples=150, deadline=None)
def test_any_damage_to_the_example_is_survived(kind: ChartKind, data: st.DataObject) -> None:
    text = kind.example
    for _ in range(data.draw(st.integers(1, 6))):
        at = data.draw(st.integers(0, len(text)))
        cut = data.draw(st.integers(0, 3))
        text = text[:at] + data.draw(st.sampled_from(["", *SIGNS])) + text[at + cut :]
    passage = Passage.of(text)
    reading = kind.read(passage, defaults_of(kind))
    for diagnostic in reading.diagnostics:
        span = diagnostic.span
        assert 1 <= span.line <= len(passage.lines)
        stored = passage.source.lines[span.line - 1]
        assert 1 <= span.column <= span.end_column <= len(stored) + 1
    if reading.chart is not None:
        kind.analyse(reading.chart, surroundings(passage))
