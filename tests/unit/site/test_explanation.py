"""What was found is told in the standing public form, and in tables for readers."""

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.analysis.reading import Fact, Place
from sitegen.kinds.kind import Analysis, ChartKind, Surroundings
from sitegen.site.explanation import Explanation, explain_article

WriteArticle = Callable[..., Path]
CHART = "```claps\nid: {id}\ntitle: The beat\n\n{body}\n```\n\n"


def analyse(_chart: object, _surroundings: Surroundings) -> Analysis:
    place = Place(2, Fraction(5, 2), ("hands-2-2_1_2",))
    sentence = "Two of three claps fall in bar 2."
    facts = (Fact("share", Fraction(2, 3), "67 %", "", (place,), sentence),)
    notes = [{"bar": 1, "degree": "♭3", "drum": None}, {"bar": 2, "degree": None, "drum": None}]
    record: Mapping[str, object] = {"id": "", "key": "E♭", "notes": notes, "chords": []}
    return Analysis(None, record, facts, ())


@pytest.fixture
def explanation(write_article: WriteArticle, claps: ChartKind) -> Explanation:
    words = CHART.format(id="a", body="x x") + CHART.format(id="b", body="?")
    path = write_article("low-tide", words + "{see nobody}\n")
    return explain_article(path, (replace(claps, analyse=analyse),))


def test_the_public_form(explanation: Explanation) -> None:
    record = json.loads(explanation.as_json())

    assert list(record) == ["version", "charts", "diagnostics"]
    assert record["version"] == 1
    assert [found["code"] for found in record["diagnostics"]] == ["mark-sign", "chart-unknown"]
    (chart,) = record["charts"]
    assert (chart["id"], chart["kind"], chart["name"]) == ("a", "claps", "Example 1")
    assert chart["notes"][0] == {"bar": 1, "degree": "♭3", "drum": None}
    assert chart["facts"] == {
        "share": {
            "value": "2/3",
            "text": "67 %",
            "unit": "",
            "sentence": "Two of three claps fall in bar 2.",
            "evidence": [{"bar": 2, "beat": "2 1/2", "notes": ["hands-2-2_1_2"]}],
        }
    }


def test_the_same_write_up_gives_the_same_bytes(explanation: Explanation) -> None:
    assert explanation.as_json() == explanation.as_json()
    assert "♭3" in explanation.as_json()


def test_the_tables_hold_what_was_found_and_no_empty_column(explanation: Explanation) -> None:
    text = explanation.as_text()

    assert text.startswith('Example 1: The beat (claps "a")\n  key: E♭\n')
    assert "♭3" in text
    assert "drum" not in text
    assert "share" in text
    assert text.endswith("67 %    bar 2")
    assert "  what the notes say\n  - Two of three claps fall in bar 2.\n" in text
    assert all(line == line.rstrip() for line in text.splitlines())
