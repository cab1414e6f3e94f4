"""What prose says of a chart is printed when it is true and told when it is not."""

from fractions import Fraction

import pytest

from sitegen.analysis.reading import Fact, Place
from sitegen.article import RoleUse
from sitegen.diagnostics import Diagnostic
from sitegen.kinds.kind import Analysis
from sitegen.site.citations import Citable, Citation, agrees, resolve_citation
from sitegen.source import Source, Span

SOURCE = Source("article.md", "It has {fact opening voice.notes = 9} notes.\n")
WHOLE, TARGET, PATH, EXPECTED = (Span(1, n, 1, n + 1) for n in (8, 14, 22, 36))
BARS = (Place(1, Fraction(1)), Place(2, Fraction(1)))
FACTS = (
    Fact("voice.notes", 7, "7", "notes", BARS, "The voice has seven notes."),
    Fact("voice.range", "P8", "an octave"),
    Fact("key", "E♭ minor", "E♭ minor"),
)
CHARTS = {
    "opening": Citable("chart-opening", "Example 1", Analysis(None, {}, FACTS, ())),
    "lost": Citable("chart-lost", "Example 2", None),
}


def use(name: str, target: str = "opening", path: str = "", expected: str = "") -> RoleUse:
    return RoleUse(name, "", WHOLE, WHOLE, None, target, TARGET, path, PATH, expected, EXPECTED)


def fault_of(role: RoleUse) -> Diagnostic:
    found = resolve_citation(role, CHARTS, SOURCE)
    assert isinstance(found, Diagnostic)
    return found


def test_see_gives_the_number_and_the_link() -> None:
    assert resolve_citation(use("see"), CHARTS, SOURCE) == Citation("Example 1", "#chart-opening")


def test_see_finds_a_chart_that_could_not_be_read() -> None:
    assert resolve_citation(use("see", "lost"), CHARTS, SOURCE) is not None
    assert resolve_citation(use("fact", "lost", "key"), CHARTS, SOURCE) is None


def test_a_fact_prints_what_was_computed() -> None:
    found = resolve_citation(use("fact", path="voice.notes"), CHARTS, SOURCE)

    assert found == Citation("7")


def test_a_true_statement_prints_what_the_author_wrote() -> None:
    found = resolve_citation(use("fact", path="key", expected="Eb minor"), CHARTS, SOURCE)

    assert found == Citation("Eb minor")


def test_a_wrong_statement_is_told_with_both_values_at_its_place() -> None:
    found = fault_of(use("fact", path="voice.notes", expected="9"))

    assert (found.code, found.span) == ("fact-differs", EXPECTED)
    assert found.message == 'the text says "9", Example 1 has "7 notes", in bars 1 and 2'
    assert found.hint.endswith("voice.notes of Example 1: The voice has seven notes.")


@pytest.mark.parametrize("name", ["see", "fact"])
def test_an_unknown_chart_brings_the_nearest_id(name: str) -> None:
    found = fault_of(use(name, "openning", "key"))

    assert (found.code, found.span) == ("chart-unknown", TARGET)
    assert found.hint == 'did you mean "opening"?'


@pytest.mark.parametrize(
    ("path", "hint"),
    [
        ("voice.note", "voice.notes"),
        ("voice.zzzzz", "voice.notes, voice.range"),
        ("zzz", "voice.range"),
    ],
)
def test_an_unknown_fact_brings_near_ones(path: str, hint: str) -> None:
    found = fault_of(use("fact", path=path))

    assert (found.code, found.span) == ("fact-unknown", PATH)
    assert hint in found.hint


def test_a_role_that_speaks_of_no_chart_is_left_alone() -> None:
    assert resolve_citation(use("chord", ""), CHARTS, SOURCE) is None


@pytest.mark.parametrize("text", ["7", " 7 ", "7 notes", "7  notes"])
def test_the_unit_may_be_said_or_left_out(text: str) -> None:
    assert agrees(text, FACTS[0])


@pytest.mark.parametrize("text", ["8", "7.0", "17", "7 bars", "", "-7"])
def test_another_figure_does_not_agree(text: str) -> None:
    assert not agrees(text, FACTS[0])


def test_an_exact_value_agrees_as_well_as_its_text() -> None:
    share = Fact("share", Fraction(1, 2), "50 %")

    assert agrees("1/2", share)
    assert agrees("50 %", share)
