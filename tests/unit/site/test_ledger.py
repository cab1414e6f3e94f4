"""What a published folder says of itself can be read back, and rubbish is no ledger."""

import os
from pathlib import Path

import pytest

from sitegen.site.ledger import Ledger, Published, ledger_text, read_ledger
from sitegen.site.publishing import MARKER


def test_reads_what_it_wrote(tmp_path: Path) -> None:
    pages = {"b": Published("---\ntitle: Ü\n---\n", 3), "a": Published("", 0)}
    ledger = Ledger(pages, ("styles/a.css",))

    (tmp_path / MARKER).write_text(ledger_text(ledger), encoding="utf-8")

    assert read_ledger(tmp_path) == ledger


def test_the_order_of_entries_changes_no_byte() -> None:
    one, two = Published("1", 1), Published("2", 2)

    assert ledger_text(Ledger({"a": one, "b": two})) == ledger_text(Ledger({"b": two, "a": one}))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "{}",
        "\x00",
        '{"version": 2, "pages": {}, "assets": []}',
        '{"version": 1, "pages": [], "assets": []}',
        '{"version": 1, "pages": {"a": {"front": "x"}}, "assets": []}',
    ],
)
def test_anything_else_is_an_empty_ledger(tmp_path: Path, text: str) -> None:
    (tmp_path / MARKER).write_text(text, encoding="utf-8")

    assert read_ledger(tmp_path) == Ledger()


def test_no_folder_is_an_empty_ledger(tmp_path: Path) -> None:
    assert read_ledger(tmp_path / "missing") == Ledger()


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / MARKER)

    assert read_ledger(tmp_path) == Ledger()
