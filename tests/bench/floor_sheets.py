"""Keep what a build gives to verovio for its final sheets, for the floor to draw.

Run it with `python tests/bench/floor_sheets.py CONTENT SHEETS [--jobs N]`. A build is run, with
what it hands to verovio overheard: for every sheet that a page shows or links to, the MEI and the
options that it was drawn with in the end. What is drawn only to learn how wide it is does not
count, and two sheets of a chart that are drawn of the same MEI in the same way count once, as the
build draws them once. SHEETS gets a folder a write-up, with `1.mei`, ... and `sheets.json`, the
options by name.
"""

import argparse
import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from unittest.mock import patch

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT)]

from sitegen.cli import main as run_sitegen  # noqa: E402 - after the path is set
from sitegen.engraving import systems  # noqa: E402 - as above
from sitegen.engraving.svg import Sheet  # noqa: E402 - as above
from sitegen.engraving.systems import Layouts  # noqa: E402 - as above
from sitegen.engraving.toolkit import Rendering, render  # noqa: E402 - as above

Given = tuple[str, Mapping[str, object]]
"""An MEI file and the options that it is drawn with."""


class UnbuiltError(RuntimeError):
    """The content could not be built without a fault, so that its sheets are not known."""


def main(arguments: list[str]) -> int:
    """Keep the sheets of a content folder, one process for each part of it."""
    parser = argparse.ArgumentParser(description="Keep what verovio is given.")
    parser.add_argument("content", type=Path)
    parser.add_argument("sheets", type=Path)
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    asked = parser.parse_args(arguments)
    if asked.jobs == 1:
        keep_sheets(asked.content, asked.sheets)
    else:
        keep_in_parts(asked.content, asked.sheets, asked.jobs)
    return 0


def keep_in_parts(content: Path, sheets: Path, jobs: int) -> None:
    """Keep the sheets of `content`, its write-ups dealt out to so many processes."""
    articles = sorted((content / "breakdowns").iterdir())
    with tempfile.TemporaryDirectory() as kept:
        running = []
        for job in range(min(jobs, len(articles))):
            part = Path(kept, str(job))
            _deal(content, part, articles[job::jobs])
            running.append(_start(part, sheets))
        failed = [process for process in running if process.wait()]
    if failed:
        raise UnbuiltError(f"{content} could not be built")


def _deal(content: Path, part: Path, articles: list[Path]) -> None:
    for article in articles:
        shutil.copytree(article, part / "breakdowns" / article.name)
    shutil.copy(content / "site.toml", part)
    shutil.copytree(content / "pages", part / "pages")


def _start(part: Path, sheets: Path) -> "subprocess.Popen[bytes]":
    script = [sys.executable, __file__, str(part), str(sheets), "--jobs", "1"]
    return subprocess.Popen(script, stdout=subprocess.DEVNULL)


def keep_sheets(content: Path, sheets: Path) -> None:
    """Build each write-up of `content` by itself, and keep its sheets.

    Raises UnbuiltError where a build has a fault.
    """
    with tempfile.TemporaryDirectory() as kept:
        one, out = Path(kept, "one"), Path(kept, "out")
        for article in sorted((content / "breakdowns").iterdir()):
            shutil.rmtree(one, ignore_errors=True)
            _deal(content, one, [article])
            with overheard() as given:
                if run_sitegen(["build", str(one), "--out", str(out), "--jobs=1", "--no-cache"]):
                    raise UnbuiltError(f"{article} could not be built")
            _write(sheets / article.name, given)


@contextmanager
def overheard() -> Iterator[list[Given]]:
    """Yield a list that gets what every final sheet is drawn of while the block runs."""
    drawn: dict[str, Given] = {}
    final: list[Given] = []

    def listen(mei: str, options: Mapping[str, object]) -> Rendering:
        rendering = render(mei, options)
        drawn[rendering.svg] = (mei, dict(options))
        return rendering

    lay_out: Callable[..., Sheet] = Layouts.sheet

    def settle(self: Layouts, width: int, *, by_author: bool) -> Sheet:
        sheet = lay_out(self, width, by_author=by_author)
        given = drawn[sheet.svg]
        if given not in final:
            final.append(given)
        return sheet

    with patch.object(systems, "render", listen), patch.object(Layouts, "sheet", settle):
        yield final


def _write(folder: Path, given: list[Given]) -> None:
    folder.mkdir(parents=True)
    options = {}
    for number, (mei, drawn_with) in enumerate(given, start=1):
        (folder / f"{number}.mei").write_text(mei, encoding="utf-8")
        options[str(number)] = drawn_with
    (folder / "sheets.json").write_text(json.dumps(options), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
