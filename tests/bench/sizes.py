"""What a write-up costs in a build of thousands, beside one in a build of hundreds.

Run it with `python tests/bench/sizes.py [--articles 200 5000]`. What grows faster than the archive
cannot be in drawing a chart, which knows nothing of other write-ups; it is in all the rest: the
plan of the site, related write-ups, the archive's pages and indexes, the index of words, writing.
So the sizes are compared with the notation left undrawn (`undrawn.py`), and what a write-up costs
more in the larger archive is set beside what it costs with its drawings in the smaller. Processor
time on one process; nothing is asserted. `building.py` compares whole builds, which takes hours.
"""

import argparse
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench.archive import write_archive  # noqa: E402 - after the path is set
from bench.building_clock import Run, timed_python  # noqa: E402 - as above

_LARGE, _MEMORY = 1.1, 600
_MEGABYTE = 1_000_000


def main(arguments: list[str]) -> int:
    """Build archives of two sizes and print what a write-up costs in each."""
    parser = argparse.ArgumentParser(description=__doc__, allow_abbrev=False)
    parser.add_argument("--articles", type=int, nargs=2, default=[200, 5000])
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    few, many = sorted(asked.articles)
    with tempfile.TemporaryDirectory(prefix="sizes-") as folder:
        top = Path(folder)
        for count in (few, many):
            write_archive(top / f"content-{count}", count, asked.seed)
        command = ["-m", "sitegen", "build", str(top / f"content-{few}"), "--no-cache"]
        full = timed_python([*command, "--out", str(top / "full"), "--jobs", "1"], ROOT, {})
        print(f"{few} write-ups, drawn: {_told(full, few)}", flush=True)
        small, large = (_build_undrawn(top, count) for count in (few, many))
    more = large.processor / many - small.processor / few
    ratio = 1 + more / (full.processor / few)
    print(f"a write-up among {many}, in write-ups among {few}: {ratio:.2f}, at most {_LARGE}")
    peak = max(run.peak for run in (full, small, large)) / _MEGABYTE
    print(f"largest process: {peak:.0f} MB, at most {_MEMORY}")
    return 0


def _build_undrawn(top: Path, count: int) -> Run:
    script = str(Path(__file__).with_name("undrawn.py"))
    folders = [str(top / f"content-{count}"), str(top / f"undrawn-{count}")]
    run = timed_python([script, *folders], ROOT, {})
    print(f"{count} write-ups, their notation undrawn: {_told(run, count)}", flush=True)
    return run


def _told(run: Run, count: int) -> str:
    each = run.processor / count
    return f"{each:.3f} s of a processor each, at most {run.peak / _MEGABYTE:.0f} MB a process"


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
