"""The rooms import one way, and a command imports no more than it needs."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).parents[2]
HEAVY = ("verovio", "matplotlib", "music21", "lxml", "jinja2", "markdown_it", "fontTools")


def lint_imports(folder: Path) -> subprocess.CompletedProcess[str]:
    command = [
        sys.executable,
        "-c",
        "from importlinter.cli import lint_imports_command as run; run()",
    ]
    return subprocess.run(
        [*command, "--no-cache"], cwd=folder, capture_output=True, text=True, check=False
    )


def loaded_by(statement: str) -> set[str]:
    program = f"import sys\n{statement}\nprint(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=CHECKOUT, capture_output=True, text=True, check=True
    )
    return set(done.stdout.split())


def test_the_rooms_import_one_way() -> None:
    done = lint_imports(CHECKOUT)

    assert done.returncode == 0, done.stdout


def test_an_import_against_the_order_is_caught(tmp_path: Path) -> None:
    package = tmp_path / "sitegen"
    for room in ("score", "site"):
        (package / room).mkdir(parents=True)
        (package / room / "__init__.py").touch()
    (package / "__init__.py").touch()
    (package / "score" / "__init__.py").write_text("import sitegen.site\n", encoding="utf-8")
    settings = (CHECKOUT / "pyproject.toml").read_text(encoding="utf-8")
    others = r' {4}"sitegen\.(?!score"|site")[^"]+",\n'
    settings = re.sub(others, "", settings)
    (tmp_path / "pyproject.toml").write_text(settings, encoding="utf-8")

    done = lint_imports(tmp_path)

    assert done.returncode == 1
    assert "sitegen.score -> sitegen.site" in done.stdout


def test_the_help_needs_none_of_the_heavy_libraries() -> None:
    assert loaded_by("import sitegen.cli") & set(HEAVY) == set()


def test_a_heavy_import_would_be_seen() -> None:
    assert "jinja2" in loaded_by("import sitegen.cli, jinja2")


@pytest.mark.parametrize("library", ["verovio", "matplotlib", "music21"])
def test_checking_draws_nothing(library: str, tmp_path: Path) -> None:
    content = tmp_path / "content"
    statement = (
        "from sitegen.cli import main\n"
        "import os, io, contextlib\n"
        f"os.chdir({str(tmp_path)!r})\n"
        "with contextlib.redirect_stdout(io.StringIO()):\n"
        "    assert main(['start', 'low-tide']) == 0\n"
        "    assert main(['check']) == 0"
    )

    assert library not in loaded_by(statement)
    assert content.is_dir()


def test_a_build_with_nothing_to_do_loads_none_of_the_rooms(tmp_path: Path) -> None:
    build = "main(['build', '--drafts'])"
    statement = (
        "from sitegen.cli import main\n"
        "import os, io, contextlib\n"
        f"os.chdir({str(tmp_path)!r})\n"
        "with contextlib.redirect_stdout(io.StringIO()) as said:\n"
        f"    main(['start', 'low-tide'])\n"
        f"    assert {build} == 0\n"
    )
    loaded_by(statement)

    loaded = loaded_by(
        "from sitegen.cli import main\n"
        "import os, io, contextlib\n"
        f"os.chdir({str(tmp_path)!r})\n"
        "with contextlib.redirect_stdout(io.StringIO()) as said:\n"
        f"    assert {build} == 0\n"
        "assert 'nothing to do' in said.getvalue()"
    )

    assert loaded & set(HEAVY) == set()
    rooms = {name.split(".")[1] for name in loaded if name.startswith("sitegen.")}
    assert rooms == {"cli", "site"}
