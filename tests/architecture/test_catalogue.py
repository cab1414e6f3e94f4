"""Every code is told with its cause, an example that brings it and one that brings nothing."""

import ast
import re
from pathlib import Path

import pytest

from sitegen.diagnostics import CATALOGUE, Code, Diagnostic, draw_frame
from sitegen.kinds import KINDS
from sitegen.site.inspection import inspect

PACKAGE = Path(__file__).parents[2] / "sitegen"
FRONT = "---\ntitle: An example\nsummary: Made for a test.\nstatus: draft\n---\n\n"
ARTICLE = "breakdowns/example/article.md"


def write(content: Path, name: str, text: str) -> None:
    """Write an example; a lone surrogate in it stands for a byte that is not UTF-8."""
    path = content / (ARTICLE if name == "article.md" else name)
    path.parent.mkdir(parents=True, exist_ok=True)
    whole = path.suffix != ".md" or text.startswith("---")
    whole_text = text if whole else FRONT + text
    path.write_bytes(whole_text.encode("utf-8", "surrogateescape"))


def content_of(code: Code, folder: Path, *, bad: bool) -> Path:
    """Make a content folder that holds one of the code's examples."""
    content = folder / "content"
    write(content, "site.toml", 'title = "Examples"\n')
    for name, text in code.beside:
        write(content, name, text)
    if bad and code.link:
        write(folder, "elsewhere.md", code.bad)
        path = content / code.file
        path.parent.mkdir(parents=True)
        path.symlink_to(code.link)
    elif bad:
        write(content, code.file, code.bad)
    else:
        write(content, code.good_file or code.file, code.good)
    return content


def faults(content: Path) -> tuple[Diagnostic, ...]:
    inspection = inspect([content], KINDS)
    assert inspection.bugs == ()
    return inspection.diagnostics


def used_codes() -> dict[str, str]:
    """Return the codes that the package gives to `fault` and its like, with where."""
    used = {}
    for path in PACKAGE.rglob("*.py"):
        if "catalogue" in path.parts:
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and node.value in CATALOGUE:
                used[str(node.value)] = path.name
    return used


@pytest.mark.parametrize("code", CATALOGUE.values(), ids=lambda code: code.name)
def test_the_bad_example_brings_its_code(code: Code, tmp_path: Path) -> None:
    found = faults(content_of(code, tmp_path, bad=True))

    assert code.name in {diagnostic.code for diagnostic in found}
    for diagnostic in found:
        assert draw_frame(diagnostic)


@pytest.mark.parametrize("code", CATALOGUE.values(), ids=lambda code: code.name)
def test_the_good_example_brings_nothing(code: Code, tmp_path: Path) -> None:
    found = faults(content_of(code, tmp_path, bad=False))

    assert [draw_frame(diagnostic) for diagnostic in found] == []


@pytest.mark.parametrize("code", CATALOGUE.values(), ids=lambda code: code.name)
def test_a_code_is_a_plain_name_with_a_cause_in_a_sentence(code: Code) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", code.name)
    assert re.fullmatch(r"[A-Z].+\.", code.cause, re.DOTALL)


def test_every_code_is_used_by_the_package() -> None:
    assert set(CATALOGUE) - set(used_codes()) == set()


def test_the_catalogue_is_not_empty_and_no_code_stands_twice() -> None:
    entries = [
        node
        for path in (PACKAGE / "diagnostics" / "catalogue").glob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Code"
    ]

    assert len(entries) == len(CATALOGUE) > 0
