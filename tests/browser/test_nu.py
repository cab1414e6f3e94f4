"""The Nu HTML checker (W3C) finds no error in any page.

It warns of `role="list"`, which it calls unnecessary: without it a list without bullets is no list
to some screen readers.
"""

import json
import subprocess
from pathlib import Path

import pytest
from browser.checkers import checker, program

pytestmark = pytest.mark.browser

BROKEN = """<!DOCTYPE html><html lang="en"><head><title>x</title></head><body>
<p id="a"><p id="a"><ul><div></div></ul></body></html>"""


def messages(*paths: Path) -> list[str]:
    """Return the errors that the checker finds in some files."""
    jar = checker("vnu-jar", "build", "dist", "vnu.jar")
    command = [program("java"), "-jar", str(jar), "--format", "json", "--stdout", *map(str, paths)]
    done = subprocess.run(command, check=False, capture_output=True, text=True)
    found = json.loads(done.stdout)["messages"]
    errors = [message for message in found if message["type"] == "error"]
    return [f"{m.get('url', '')}:{m.get('lastLine', 0)} {m['message']}" for m in errors]


def test_every_page_is_sound_html(published: Path) -> None:
    pages = sorted(published.rglob("*.html"))
    whole = [page for page in pages if page.read_text("utf-8").startswith("<!DOCTYPE")]
    assert whole
    assert messages(*whole) == []


def test_a_broken_page_is_seen(tmp_path: Path) -> None:
    page = tmp_path / "broken.html"
    page.write_text(BROKEN, encoding="utf-8")
    assert len(messages(page)) >= 2
