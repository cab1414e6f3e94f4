"""What a build costs beside a floor that is measured in the same run.

Run it with `python tests/bench/building.py [--articles 200 1000] [--rounds 2]`. For each size it
makes a synthetic archive (`archive.py`), keeps what verovio is given for its sheets
(`floor_sheets.py`), and then measures, one after the other and round by round, so that all suffer
the same noise: the floor (`floor.py`), a cold build on two processes, the floor, a cold build on
one, and then saves in the preview (`saving.py`). Each figure is a ratio, the median of the rounds,
with the target beside it; nothing is asserted. A thousand write-ups take hours on one core.

Other measurements join in `measure_size`: a function that takes an `Archive` and yields figures.
"""

import argparse
import shutil
import statistics
import sys
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench.archive import write_archive  # noqa: E402 - after the path is set
from bench.building_clock import FailedRunError, Run, timed_python  # noqa: E402 - as above
from bench.floor_sheets import keep_in_parts  # noqa: E402 - as above
from bench.kills_site import manifest_of  # noqa: E402 - as above
from bench.saving import CHART, PROSE, measure_saves  # noqa: E402 - as above

from sitegen.site.words_index import WORDS  # noqa: E402 - as above

_MEGABYTE = 1_000_000
_STARTS = 7
_TWO_PROCESSES, _ONE_PROCESS, _NOTHING, _LARGE, _MEMORY = 0.9, 1.35, 6.0, 1.1, 600


@dataclass(frozen=True)
class Ratio:
    """A measured figure beside its target; `each` are the figures of the rounds, to show noise."""

    what: str
    value: float
    target: float
    unit: str = ""
    each: tuple[float, ...] = ()

    def row(self) -> str:
        """Return the figure as a line of the table."""
        verdict = "reached" if self.value <= self.target else "missed"
        noise = f"  ({', '.join(f'{one:.2f}' for one in self.each)})" if len(self.each) > 1 else ""
        target = f"at most {self.target:g}{self.unit}"
        return f"{self.what:<58} {self.value:>8.2f}{self.unit:<3} {target:<16} {verdict}{noise}"


@dataclass
class Archive:
    """A synthetic archive that is measured; `folder` holds its content, sheets and builds.

    `cold` are the seconds of its cold builds on two processes, `peaks` the memory of all builds
    in bytes.
    """

    articles: int
    folder: Path
    cold: list[float] = field(default_factory=list)
    peaks: list[int] = field(default_factory=list)

    @property
    def content(self) -> Path:
        """The content folder."""
        return self.folder / "content"

    def build(self, name: str, jobs: int, *, cold: bool = True) -> Run:
        """Build into the folder `name`, at first without anything that was built before."""
        out, cache = self.folder / name, self.folder / f"{name}-cache"
        if cold:
            shutil.rmtree(out, ignore_errors=True)
            shutil.rmtree(cache, ignore_errors=True)
        command = ["-m", "sitegen", "build", str(self.content), "--out", str(out)]
        asked = [*command, "--jobs", str(jobs)]
        run = timed_python(asked, ROOT, {"XDG_CACHE_HOME": str(cache)})
        self.peaks.append(run.peak)
        return run

    def floor(self) -> Run:
        """Run the floor; its seconds end with its last file."""
        out = self.folder / "floor"
        shutil.rmtree(out, ignore_errors=True)
        script = str(Path(__file__).with_name("floor.py"))
        folders = [self.folder / "sheets", self.content, out]
        run = timed_python([script, *map(str, folders)], ROOT, {})
        return replace(run, seconds=float(run.printed.split()[1]) - run.began)


def main(arguments: list[str]) -> int:
    """Measure the sizes asked for and print the table."""
    parser = argparse.ArgumentParser(description="Measure builds of synthetic archives.")
    parser.add_argument("--articles", type=int, nargs="+", default=[8, 32])
    parser.add_argument("--rounds", type=int, default=1)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    measured = []
    with tempfile.TemporaryDirectory(prefix="building-") as kept:
        for articles in sorted(asked.articles):
            archive = make_archive(Path(kept, str(articles)), articles, asked.seed)
            for ratio in measure_size(archive, asked.rounds):
                print(ratio.row(), flush=True)
            measured.append(archive)
            for folder in ("sheets", "floor", "two", "one"):
                shutil.rmtree(archive.folder / folder, ignore_errors=True)
        for ratio in compare_sizes(measured):
            print(ratio.row(), flush=True)
    return 0


def make_archive(folder: Path, articles: int, seed: int) -> Archive:
    """Return a new archive whose sheets are known, and print what it holds."""
    archive = Archive(articles, folder)
    write_archive(archive.content, articles, seed)
    keep_in_parts(archive.content, folder / "sheets", 2)
    sheets = sum(1 for _ in (folder / "sheets").rglob("*.mei"))
    print(f"{articles} write-ups, {articles * 7} charts, {sheets} sheets of notation", flush=True)
    return archive


def measure_size(archive: Archive, rounds: int) -> Iterator[Ratio]:
    """Yield what one archive costs."""
    yield from measure_cold(archive, rounds)
    yield measure_nothing_to_do(archive)
    yield compare_builds(archive)
    saves = measure_saves(archive.content, archive.folder / "two-cache")
    yield Ratio("prose saved to event, over a Markdown and a template", saves.prose, PROSE, " ms")
    yield Ratio("chart saved to event, over its engraving", saves.chart, CHART, " ms")
    held = max(archive.peaks) / _MEGABYTE
    yield Ratio("largest process of any build", held, _MEMORY, " MB")


def measure_cold(archive: Archive, rounds: int) -> Iterator[Ratio]:
    """Yield the costs of cold builds, each between two runs of the floor."""
    two, one, taken = [], [], []
    floor = archive.floor()
    for _ in range(rounds):
        cold = archive.build("two", jobs=2)
        between = archive.floor()
        alone = archive.build("one", jobs=1)
        after = archive.floor()
        archive.cold.append(cold.seconds)
        two.append(2 * cold.seconds / (floor.seconds + between.seconds))
        one.append(2 * alone.seconds / (between.seconds + after.seconds))
        taken.append(2 * alone.processor / (between.processor + after.processor))
        floor = after
    yield _median("cold build on 2 processes, in floors", two, _TWO_PROCESSES)
    yield _median("cold build on 1 process, in floors", one, _ONE_PROCESS)
    yield _median("the same in processor time, which noise hardly moves", taken, _ONE_PROCESS)


def measure_nothing_to_do(archive: Archive) -> Ratio:
    """Return what a build with no change costs, in starts of Python with two libraries."""
    ratios = []
    for _ in range(_STARTS):
        start = timed_python(["-c", "import click, msgspec"], ROOT, {})
        run = archive.build("two", 2, cold=False)
        if not run.printed.startswith("nothing to do"):
            raise FailedRunError(f"there was something to do: {run.printed}")
        ratios.append(run.seconds / start.seconds)
    return _median(f"nothing to do at {archive.articles} write-ups, in starts", ratios, _NOTHING)


def compare_builds(archive: Archive) -> Ratio:
    """Return how many files of two cold builds differ, and print the names of some.

    The index of words is left out, which its maker writes differently each time.
    """
    ours, theirs = (manifest_of(archive.folder / name) for name in ("two", "one"))
    names = {name for name, _ in ours.items() ^ theirs.items()}
    differing = sorted(name for name in names if not name.startswith(f"{WORDS}/"))
    for name in differing[:5]:
        print(f"  differs: {name}")
    return Ratio("files that differ between two cold builds", len(differing), 0)


def compare_sizes(archives: Sequence[Archive]) -> Iterator[Ratio]:
    """Yield what a write-up of the largest archive costs beside one of the smallest."""
    small, large = archives[0], archives[-1]
    if small is large:
        return
    costs = [statistics.median(one.cold) / one.articles for one in (small, large)]
    what = f"a write-up among {large.articles}, in write-ups among {small.articles}"
    yield Ratio(what, costs[1] / costs[0], _LARGE)


def _median(what: str, values: Sequence[float], target: float) -> Ratio:
    return Ratio(what, statistics.median(values), target, each=tuple(values))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
