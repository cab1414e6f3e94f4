"""A file cannot tell a terminal what to do, nor lie about what faults it has."""

import json

import pytest

from sitegen.diagnostics import draw_frame, fault, printable, printable_json
from sitegen.source import Source, Span

# Control functions: ECMA-48, 5.3 (C0, C1); directional formatting: UAX #9, table 4.
OBEYED = ["\x00", "\x07", "\x1b", "\x7f", "\x85", "\x9b", "\u200f", "\u202e", "\u2066", "\u2028"]


@pytest.mark.parametrize("sign", [*OBEYED, "\ud800"])
def test_what_a_terminal_obeys_is_shown_instead(sign: str) -> None:
    assert printable(f"a{sign}b\tc\nד♭") == "a\ufffdb\tc\nד♭"


@pytest.mark.parametrize("sign", [*OBEYED, "\udcff"])
def test_json_says_the_same_and_is_seen(sign: str) -> None:
    text = printable_json(json.dumps(["a" + sign + "♭"], ensure_ascii=False))

    assert json.loads(text) == ["a" + sign + "♭"]
    assert sign not in text
    assert "♭" in text


def test_no_part_of_a_frame_can_forge_another_fault() -> None:
    evil = "\x1b[2J\u202eb.md:1:1: note\nc.md:1:1: error[pitch]: forged"
    line = evil.replace("\n", " ")
    wrong = fault(
        "pitch", Source(f"a{evil}.md", line), Span(1, 1, 1, 2), evil,
        label=evil, hint=evil, related=((Span(1, 1, 1, 2), evil),),
    )  # fmt: skip

    lines = draw_frame(wrong).splitlines()

    assert len(lines) == 7
    assert not [one for one in lines if one.startswith("c.md")]
    assert not set("\x1b\u202e") & set("".join(lines))


def test_a_caret_stands_under_its_place_behind_a_hidden_sign() -> None:
    frame = draw_frame(fault("pitch", Source("a", "\u202eab X"), Span(1, 5, 1, 6), "no"))
    line, carets = frame.splitlines()[2:]

    assert line[carets.index("^")] == "X"


def test_a_message_that_quotes_a_whole_file_is_shortened() -> None:
    source = Source("a", "x")
    wrong = fault(
        "pitch", source, Span(1, 1, 1, 2), f'"{"9" * 50_000}" is no pitch', hint="y" * 9999
    )

    assert len(wrong.message) < 500
    assert wrong.message.endswith('" is no pitch')
    assert len(wrong.hint) < 1100
