"""The public forms that DEVELOPERS.md promises, held against what the commands print."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from sitegen.cli import main
from sitegen.kinds import KINDS

DEVELOPERS = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text(encoding="utf-8")
FORM = DEVELOPERS[DEVELOPERS.index('{"version": 1') :].split("\n\n")[0]
BEAT = re.compile(r"\d+( \d+/\d+)?")
EXACT = re.compile(r"\d+(/\d+)?")
NAME = re.compile(r"[A-G](♭|♯)*")


def promised(name: str) -> set[str]:
    """Return the fields that DEVELOPERS.md lists for the records in `name`."""
    inside = re.search(rf'"{name}": \[\{{(.*?)\}}\]', FORM, re.DOTALL)
    assert inside is not None, name
    return set(re.findall(r'"([a-z_]+)"', inside[1]))


@pytest.fixture
def explained(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> dict[str, Any]:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "site.toml").write_text('title = "Side Two"\n', encoding="utf-8")
    fences = "\n".join(f"```{kind.name}\n{kind.example}```\n" for kind in KINDS)
    for kind in KINDS:
        for name, text in kind.example_files.items():
            (tmp_path / name).write_text(text, encoding="utf-8")
    article = tmp_path / "article.md"
    article.write_text(f"---\ntitle: All kinds\n---\n\n{fences}\nNo {{chord Xm}}.\n", "utf-8")
    assert main(["explain", "--json", str(article)]) == 1
    return dict(json.loads(capsys.readouterr().out))


def test_the_record_has_its_version_and_parts(explained: dict[str, Any]) -> None:
    assert explained["version"] == 1
    assert set(explained) == {"version", "charts", "diagnostics"}
    assert [chart["kind"] for chart in explained["charts"]] == [kind.name for kind in KINDS]


def test_every_chart_has_the_promised_fields(explained: dict[str, Any]) -> None:
    fields = {"id", "kind", "title", "key", "meter", "bars", "chords", "notes", "facts"}
    for chart in explained["charts"]:
        assert fields <= set(chart)
        assert isinstance(chart["bars"], int | float)


@pytest.mark.parametrize("records", ["chords", "notes"])
def test_chords_and_notes_have_just_the_promised_fields(
    explained: dict[str, Any], records: str
) -> None:
    found = [record for chart in explained["charts"] for record in chart[records]]
    assert found
    for record in found:
        assert set(record) == promised(records)
        assert BEAT.fullmatch(record["beat"])
        assert EXACT.fullmatch(record["duration"])


def test_names_carry_real_signs_and_roles_are_of_the_three(explained: dict[str, Any]) -> None:
    notation = explained["charts"][0]
    for chord in notation["chords"]:
        assert NAME.fullmatch(chord["root"])
        assert chord["pitch_classes"] == sorted(chord["pitch_classes"])
    roles = {note["role"] for note in notation["notes"]}
    assert roles <= {"chord tone", "tension", "non-chord tone", None}
    assert {note["fingered"] for note in notation["notes"] if note["part"] == "guitar"} >= {"E2"}


def test_facts_have_path_value_unit_and_evidence(explained: dict[str, Any]) -> None:
    facts = explained["charts"][0]["facts"]
    assert set(facts["bars"]) == {"value", "text", "unit", "sentence", "evidence"}
    evidence = facts["voice.highest"]["evidence"][0]
    assert set(evidence) == {"bar", "beat", "notes"}
    ids = {note["id"] for note in explained["charts"][0]["notes"]}
    assert set(evidence["notes"]) <= ids


def test_diagnostics_are_those_of_check(
    explained: dict[str, Any], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", "--format", "json", "article.md"]) == 1
    printed = json.loads(capsys.readouterr().out)
    listed = printed["diagnostics"] if isinstance(printed, dict) else printed
    assert listed == explained["diagnostics"]
    (fault,) = listed
    expected = "code severity message file line column end_line end_column hint"
    assert set(fault) == set(expected.split())
    assert (fault["code"], fault["column"]) == ("chord-root", 11)
