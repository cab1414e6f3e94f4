"""Inline roles are found with their exact places, and other braces stay text."""

import pytest

from sitegen.article import Article, RoleUse, read_article, render_body, role_text
from sitegen.diagnostics import Diagnostic
from sitegen.harmony import read_chord
from sitegen.score.chord import NoChord
from sitegen.score.pitch import Pitch, PitchName
from sitegen.source import Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"


def read(body: str) -> tuple[Article, tuple[Diagnostic, ...]]:
    return read_article(Source("a.md", FRONT + body), ())


def only_role(body: str) -> RoleUse:
    article, faults = read(body)
    assert faults == ()
    assert len(article.roles) == 1
    return article.roles[0]


def shown(body: str) -> str:
    return render_body(read(body)[0], lambda fence: fence.name, lambda use: f"<{use.name}>")


def marked(article: Article, span: Span) -> str:
    """Return the text of a span within one line."""
    assert span.line == span.end_line
    return article.source.lines[span.line - 1][span.column - 1 : span.end_column - 1]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("{chord Gbmaj7}", read_chord("Gbmaj7")),
        ("{chord N.C.}", NoChord()),
        ("{degree b6}", "♭6"),
        ("{degree ♯11}", "♯11"),
        ("{degree R}", "R"),
        ("{degree bb7}", "♭♭7"),
        ("{note Eb2}", Pitch(PitchName("E", -1), 2)),
        ("{note F♯}", PitchName("F", 1)),
        ("{at 1:23}", 83),
        ("{at 1:02:03}", 3723),
    ],
)
def test_a_role_has_its_value(text: str, value: object) -> None:
    assert only_role(f"It is {text}.").value == value


def test_a_fact_has_its_parts_and_their_places() -> None:
    use = only_role("So {fact low-tide  voice.highest = B♭ 5 }.")

    assert (use.name, use.target, use.path, use.expected) == (
        "fact", "low-tide", "voice.highest", "B♭ 5",
    )  # fmt: skip
    assert use.span == Span(4, 4, 4, 42)
    assert use.argument_span == Span(4, 10, 4, 40)
    assert use.target_span == Span(4, 10, 4, 18)
    assert use.path_span == Span(4, 20, 4, 33)
    assert use.expected_span == Span(4, 36, 4, 40)


def test_a_fact_without_expectation_and_a_reference_name_their_chart() -> None:
    fact = only_role("{fact plan bars}")
    see = only_role("{see plan}")

    assert (fact.target, fact.path, fact.expected, fact.expected_span) == (
        "plan",
        "bars",
        "",
        None,
    )
    assert (see.target, see.target_span) == ("plan", Span(4, 6, 4, 10))


@pytest.mark.parametrize(
    ("body", "places"),
    [
        ("Over {chord G} and {chord C}.", [(4, 6), (4, 20)]),
        ("First line\n  and {chord G} here\nand {chord C}", [(5, 7), (6, 5)]),
        ("> A {chord G}\nlazy {chord C}", [(4, 5), (5, 6)]),
        ("> - > a {chord G}\n>   >   b {chord C}", [(4, 9), (5, 11)]),
        ("1. one\n\n   two {chord G}\n   - {chord C}", [(6, 8), (7, 6)]),
        ("-\ta {chord G}\n\tb {chord C}", [(4, 5), (5, 4)]),
        ("## About {chord G} ##", [(4, 10)]),
        (">   # {chord G}", [(4, 7)]),
        ("About\n{chord G}\n=====", [(5, 1)]),
        ("| {chord G} | b |\n|---|---|\n| x | {chord C} |", [(4, 3), (6, 7)]),
        ("> | a | b |\n> |---|---|\n> | \\| {chord G} | \\|{chord C}", [(6, 8), (6, 22)]),
        ("- - | a | b |\n    |---|---|\n    | - | {chord G} |", [(6, 11)]),
        ("a | b\n--|--\n | {chord G}\n{chord C}|", [(6, 4), (7, 1)]),
        ("| a | b |\n|---|---|\n|| {chord G}\n|\u2003|{chord C}", [(6, 4), (7, 4)]),
        ("| a | b |\n|---|---|\n\u2028| {chord G} | x |", [(6, 4)]),
        ("[so {chord G}](x) and **{chord C}**", [(4, 5), (4, 25)]),
        ("![a {chord G} ![{chord C}](y.png)](x.png)", [(4, 5), (4, 17)]),
        ("a^[note {chord G} ^[{chord C}]]", [(4, 9), (4, 21)]),
        ("a^[x {chord G}] b^[x {chord G}]", [(4, 6), (4, 22)]),
        ("a[^1]\n\n[^1]: x {chord G}\n    y {chord C}", [(6, 9), (7, 7)]),
        ("<b>{chord G}</b> `{chord C}`", [(4, 4)]),
        ("{chord G}\\\n  {chord C}", [(4, 1), (5, 3)]),
        ("\u00e9e\u0301𝄪 {chord G}", [(4, 6)]),
        ("&amp; \\* {chord G}", [(4, 10)]),
    ],
)
def test_places_are_exact(body: str, places: list[tuple[int, int]]) -> None:
    article, faults = read(body)

    shown_faults = [fault for fault in faults if fault.code != "heading-level"]
    assert shown_faults == []
    assert [(use.span.line, use.span.column) for use in article.roles] == places
    for use in article.roles:
        assert marked(article, use.span) == f"{{chord {use.argument}}}"
        assert marked(article, use.argument_span) == use.argument


def test_a_role_may_be_broken_over_two_lines() -> None:
    article, faults = read("> So {fact plan\n>   bars = 64} it is.")

    assert faults == ()
    use = article.roles[0]
    assert (use.target, use.path, use.expected) == ("plan", "bars", "64")
    assert use.span == Span(4, 6, 5, 15)
    assert use.path_span == Span(5, 5, 5, 9)


@pytest.mark.parametrize(
    "text",
    ["{}", "{ x }", "{1, 2}", "{a, b}", "{word}", "{ chord G }", "\\{chord G}", "\\{foo bar}", "{",
     "}", "{{}}", "`{chord G}`", "{a+b c}", "{a: b}"],
)  # fmt: skip
def test_braces_of_prose_stay(text: str) -> None:
    article, faults = read(f"So {text} it is.")

    assert (article.roles, faults) == ((), ())
    kept = text.replace("\\", "").replace("`", "")
    assert kept in shown(f"So {text} it is.")


@pytest.mark.parametrize(
    "body", ["    {chord H}\n", "```text\n{chord H}\n```\n", "<!-- {chord H} -->"]
)
def test_code_and_comments_hold_no_roles(body: str) -> None:
    article, faults = read(body)

    assert (article.roles, faults) == ((), ())


@pytest.mark.parametrize(
    ("text", "code", "place"),
    [
        ("{chrod G}", "role-name", "chrod"),
        ("{Chord G}", "role-name", "Chord"),
        ("{facts about it all}", "role-name", "facts"),
        ("{zzz opening}", "role-name", "zzz"),
        ("{zzz 1:23}", "role-name", "zzz"),
        ("{zzz F#m7b5/A}", "role-name", "zzz"),
        ("{zzz b6}", "role-name", "zzz"),
        ("{zzz and so on}", "role-unknown", "zzz"),
        ("{chord}", "role-argument", "{chord}"),
        ("{see }", "role-argument", "{see }"),
        ("{degree 14}", "role-value", "14"),
        ("{degree b}", "role-value", "b"),
        ("{degree b#3}", "role-value", "b#3"),
        ("{degree bR}", "role-value", "bR"),
        ("{note H2}", "role-value", "H2"),
        ("{note eb2}", "role-value", "eb2"),
        ("{at 83}", "role-value", "83"),
        ("{at 1:75}", "role-value", "1:75"),
        ("{see Low Tide}", "role-value", "Low Tide"),
        ("{see low_tide}", "role-value", "low_tide"),
        ("{fact plan}", "role-value", "plan"),
        ("{fact plan = 9}", "role-value", "plan = 9"),
        ("{fact Plan bars}", "role-value", "Plan"),
        ("{fact plan voice highest}", "role-value", "highest"),
        ("{fact plan bars =}", "role-value", "="),
        ("{chord G and so", "role-open", "{chord"),
    ],
)
def test_what_cannot_be_read_is_told_and_stays_text(text: str, code: str, place: str) -> None:
    body = f"> - So *{text}* it is."
    article, faults = read(body)

    assert article.roles == ()
    assert [(fault.code, marked(article, fault.span)) for fault in faults] == [(code, place)]
    assert text in shown(body)


def test_the_wrong_letters_of_a_chord_are_told() -> None:
    article, faults = read("| a |\n|---|\n| \\| {chord Gmajj7} |\n")

    assert len(faults) == 1
    assert faults[0].code.startswith("chord")
    assert faults[0].span.line == 6
    assert faults[0].span.column >= 14
    assert marked(article, faults[0].span) in "Gmajj7"
    assert article.roles == ()


def test_each_fault_is_told_once_where_the_text_is_tried_twice() -> None:
    _, faults = read("[a {zzz x} b](c) ![{zzz x}](d.png) ^[{zzz x}] [e {zzz x}")

    assert [fault.span.column for fault in faults] == [5, 21, 39, 51]


@pytest.mark.parametrize(
    ("text", "read_as"),
    [
        ("{chord Gb}", "G♭"),
        ("{degree b6}", "♭6"),
        ("{note Eb2}", "E♭2"),
        ("{at 1:23}", "1:23"),
        ("{see plan}", "plan"),
        ("{fact plan bars = 9 bars}", "9 bars"),
        ("{fact plan bars}", "plan"),
    ],
)
def test_a_role_can_be_read_without_its_page(text: str, read_as: str) -> None:
    assert role_text(only_role(text)) == read_as


def test_a_symbol_that_others_read_another_way_is_noted_at_its_letters() -> None:
    article, (note,) = read("A {chord C2} here.\n")

    assert [use.name for use in article.roles] == ["chord"]
    assert (note.code, note.severity) == ("chord-read-as", "note")
    assert (note.span.line, note.span.column, note.span.end_column) == (4, 10, 12)
