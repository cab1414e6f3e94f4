"""The help of every command is as it was read and agreed to.

`pytest --update-golden` writes the files anew, and still fails that run.
"""

from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli import sitegen

GOLDEN = Path(__file__).parents[1] / "golden" / "help"


def help_text(*command: str) -> str:
    """Return the help as printed on a terminal of 80 columns."""
    runner = CliRunner()
    result = runner.invoke(sitegen, [*command, "--help"], prog_name="sitegen", terminal_width=80)
    assert result.exit_code == 0
    return result.output


@pytest.mark.parametrize("command", [(), *((name,) for name in sorted(sitegen.commands))], ids=str)
def test_help(command: tuple[str, ...], pytestconfig: pytest.Config) -> None:
    golden = GOLDEN / f"{'-'.join(('sitegen', *command))}.txt"
    text = help_text(*command)
    if pytestconfig.getoption("--update-golden"):
        golden.write_text(text, encoding="utf-8")
        pytest.fail(f"{golden.name} was written anew: read it, then run without --update-golden")

    assert text == golden.read_text(encoding="utf-8")


def test_no_golden_is_left_over() -> None:
    names = {"sitegen", *(f"sitegen-{name}" for name in sitegen.commands)}

    assert {path.stem for path in GOLDEN.glob("*.txt")} == names
