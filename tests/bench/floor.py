"""The floor of a build: the least that anybody's program would have to do for the same pages.

Run it with `python tests/bench/floor.py SHEETS CONTENT OUT`. One process loads every MEI of SHEETS
into verovio, renders it and writes the SVG; renders the Markdown of every write-up of CONTENT with
markdown-it-py and writes the HTML; and nothing else. It imports nothing of sitegen. SHEETS is made
by `floor_sheets.py`. The last line tells when its last file was written, as `time.time()` does.
"""

import json
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import verovio
from markdown_it import MarkdownIt


def main(arguments: list[str]) -> int:
    """Do the work, and print how many files it wrote and when the last one was."""
    sheets, content, out = map(Path, arguments)
    toolkit, markdown = verovio.toolkit(), MarkdownIt("commonmark").enable("table")
    written = 0
    for article in sorted((content / "breakdowns").iterdir()):
        folder = out / article.name
        folder.mkdir(parents=True)
        for name, svg in _draw(toolkit, sheets / article.name):
            (folder / name).write_text(svg, encoding="utf-8")
            written += 1
        html = markdown.render(_body((article / "article.md").read_text(encoding="utf-8")))
        (folder / "index.html").write_text(html, encoding="utf-8")
        written += 1
    print(f"{written} {time.time()}")
    return 0


def _draw(toolkit: Any, sheets: Path) -> Iterator[tuple[str, str]]:  # noqa: ANN401 - no types
    for name, options in json.loads((sheets / "sheets.json").read_text(encoding="utf-8")).items():
        toolkit.resetOptions()
        toolkit.setOptions(options)
        toolkit.loadData((sheets / f"{name}.mei").read_text(encoding="utf-8"))
        yield f"{name}.svg", toolkit.renderToSVG(1)


def _body(text: str) -> str:
    """Return what stands under the front matter."""
    return text.split("\n---\n", 1)[1]


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
