"""Lighthouse's marks for the heaviest pages of the demo site, with performance, and page weights.

Run it with `SITEGEN_CHECKERS=... python tests/bench/lighthouse.py` (see `tests/browser/checkers`).
The mark for performance is a timed figure, of a slow phone that is reckoned from what this machine
took: whatever else runs here only takes from it. So each page is looked at several times, and the
median and the best mark are printed, with the load of the machine.
"""

import gzip
import os
import re
import shutil
import statistics
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
TIMES = 3


def main() -> int:
    """Print the marks and the weights; nothing is asserted."""
    from browser import test_lighthouse as lighthouse  # noqa: PLC0415 - after the path is set

    from sitegen.cli import main as sitegen  # noqa: PLC0415 - as above

    chromium = shutil.which("chromium") or ""
    categories = ("performance", *lighthouse.CATEGORIES)
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "published"
        sitegen(["build", str(ROOT / "content"), "--out", str(out)])
        shared = loaded_by_a_write_up(out)
        print(f"scripts, styles and fonts: {sum(map(weight, shared))} bytes compressed")
        pages = sorted(out.glob("*/*/index.html"), key=lambda page: -page.stat().st_size)
        with lighthouse.served(out) as top:
            for page in pages[: lighthouse.HEAVIEST]:
                address = page.parent.relative_to(out).as_posix() + "/"
                asked = top + address, chromium, Path(folder), categories
                runs = [lighthouse.marks(*asked) for _ in range(TIMES)]
                print(f"{address:<32} {weight(page)} bytes", *summary(runs), flush=True)
    return 0


def summary(runs: list[tuple[dict[str, float], list[str]]]) -> list[str]:
    """Return what is printed of the runs: median and best of each mark, and what takes from it."""
    names = runs[0][0]
    marks = {name: [given[name] for given, _ in runs] for name in names}
    told = [f"{name} {statistics.median(m)} (best {max(m)})" for name, m in marks.items()]
    lost = sorted({audit for _, failed in runs for audit in failed})
    return ["; ".join(told), *lost, f"load {os.getloadavg()[0]:.1f}"]


def loaded_by_a_write_up(out: Path) -> list[Path]:
    """Return all scripts, styles and fonts that a write-up can come to load."""
    page = next(out.glob("breakdowns/*/index.html"))
    html = page.read_text(encoding="utf-8")
    found = [
        page.parent / address
        for address in re.findall(r'(?:src|href)="([^"]+\.(?:js|css))"', html)
    ]
    for script in found:
        if script.suffix == ".js":
            named = dict.fromkeys(
                re.findall(r'"\./([\w-]+\.js)"', script.read_text(encoding="utf-8"))
            )
            found += [path for name in named if (path := script.with_name(name)) not in found]
    return [*found, *out.glob("fonts/*.woff2")]


def weight(path: Path) -> int:
    """Return the bytes of a file compressed by gzip at its best."""
    return len(gzip.compress(path.read_bytes(), 9))


if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]
    sys.exit(main())
