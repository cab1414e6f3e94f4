"""What README.md promises is there: its commands, their options, the files that it names."""

import re
import shlex
from pathlib import Path

import click
import pytest
from hypothesis import given, settings
from unit.analysis.lines_over_chords import any_chart
from unit.kinds.files import defaults_of

from sitegen.analysis.study import study_chart
from sitegen.charts.grid.attached import SIGNS
from sitegen.charts.grid.block import HEAD_NAMES
from sitegen.charts.grid.groups import PART_ROWS, SYSTEM_ROWS
from sitegen.cli import sitegen
from sitegen.kinds import KINDS
from sitegen.score.chart import Chart
from sitegen.score.drums import KIT
from sitegen.site.explanation import explain_article
from sitegen.source import Passage, Source

CHECKOUT = Path(__file__).parents[2]
README = (CHECKOUT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```sh\n(.*?)```", README, re.DOTALL)


def typed_commands(text: str) -> list[list[str]]:
    """Return the words of every sitegen command in the text, the program's name left out."""
    lines = [
        part
        for block in re.findall(r"```sh\n(.*?)```", text, re.DOTALL)
        for line in block.splitlines()
        for part in line.split("&&")
    ]
    inline = re.findall(r"`(sitegen [a-z][^`]*)`", text)
    words = [shlex.split(line) for line in [*lines, *inline]]
    return [found[1:] for found in words if found and found[0].endswith("sitegen")]


def unknown_words(command: list[str]) -> list[str]:
    """Return the command's name and options that sitegen does not have."""
    name, *rest = command
    known = sitegen.commands.get(name)
    if known is None:
        return [name]
    options = {
        text
        for param in known.params
        if isinstance(param, click.Option)
        for text in (*param.opts, "--help", "-h")
    }
    return [word for word in rest if word.startswith("-") and word not in options]


def test_every_command_and_option_exists() -> None:
    commands = typed_commands(README)

    assert {command[0] for command in commands} == set(sitegen.commands)
    assert [word for command in commands for word in unknown_words(command)] == []


@pytest.mark.parametrize("planted", ["bild", "build --draft", "explain x --jsn"])
def test_a_command_that_does_not_exist_would_be_seen(planted: str) -> None:
    (command,) = typed_commands(f"```sh\n.venv/bin/sitegen {planted}\n```")

    assert unknown_words(command) != []


def test_the_first_two_blocks_need_nothing_but_python() -> None:
    build, tests, *_ = BLOCKS

    for block in (build, tests):
        assert len(block.splitlines()) == 1
        assert block.startswith("python3 -m venv .venv && .venv/bin/pip install ")
    assert build.rstrip().endswith("&& .venv/bin/sitegen build")
    assert "-m pytest" in tests


def test_ci_runs_the_two_blocks_by_their_headings() -> None:
    script = (CHECKOUT / ".ci" / "run").read_text(encoding="utf-8")

    headings = re.findall(r'readme_command "(.*?)"', script)

    assert len(headings) == 2
    for heading in headings:
        assert re.search(rf"^## {heading}\n\n```sh\n", README, re.MULTILINE)


def test_the_examples_of_all_kinds_stand_in_it_and_read_clean() -> None:
    fences = dict(re.findall(r"^```([a-z]+)\n(.*?)^```", README, re.DOTALL | re.MULTILINE))

    for kind in KINDS:
        assert fences[kind.name] == kind.example
        assert kind.read(Passage.of(kind.example), defaults_of(kind)).diagnostics == ()


def test_it_names_every_head_line_row_mark_and_drum() -> None:
    words = set(re.findall(r"[^\s`,|]+", README))
    named = (*HEAD_NAMES, *SYSTEM_ROWS, *PART_ROWS, *SIGNS, *KIT)

    assert [name for name in named if name not in words] == []


def test_files_that_it_links_to_exist() -> None:
    links = re.findall(r"\]\((?!https?:)([^)#]+)\)", README)

    assert links != []
    assert [link for link in links if not (CHECKOUT / link).exists()] == []


CITED = README[README.index("## What prose can cite") :].split("\n## ")[0]
SUFFIXES = set(re.findall(r"`(-[a-z-]+)`", CITED))


def documented_paths() -> re.Pattern[str]:
    """Return what matches the paths of facts that README.md lists."""
    cells = [line.split(" | ")[0] for line in CITED.splitlines() if line.startswith("| `")]
    paths = {path for cell in cells for path in re.findall(r"`([^`]+)`", cell)}
    escaped = (re.sub(r"<[^>]+>", r"[\\w-]+", re.escape(path)) for path in sorted(paths))
    return re.compile(f"({'|'.join(escaped)})({'|'.join(sorted(SUFFIXES))})?")


@pytest.mark.parametrize("article", sorted((CHECKOUT / "content").glob("breakdowns/*/article.md")))
def test_every_fact_of_the_demo_stands_in_the_guide(article: Path) -> None:
    charts = explain_article(article, KINDS).charts
    found = {fact.path for chart in charts if chart.analysis for fact in chart.analysis.facts}

    assert found
    assert {path for path in found if not documented_paths().fullmatch(path)} == set()


@settings(max_examples=30)
@given(any_chart())
def test_every_fact_of_any_chart_stands_in_the_guide(chart: Chart) -> None:
    found = {fact.path for fact in study_chart(chart, Source("chart", "")).facts}

    assert {path for path in found if not documented_paths().fullmatch(path)} == set()


def test_a_fact_that_the_guide_does_not_list_would_be_seen() -> None:
    assert not documented_paths().fullmatch("voice.charm")
    assert documented_paths().fullmatch("lead-guitar.chord-tone-share-by-duration")
