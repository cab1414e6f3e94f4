"""Whether a published folder stays whole when builds are killed at random moments.

Run it with `python tests/bench/kills.py [--kills 200] [--seed 1]`; it takes some seconds a kill. A
small site alternates between two states. Each build of it, on two processes, is hit by SIGKILL or
SIGTERM, the build itself or one of its processes, at a random moment of the time that such a build
takes; every second one finds what builds before it kept. Then the published folder must be exactly
one of the two states, by the hashes of its files, no process may be left, and the next build must
publish the new state and leave nothing beside it. The status is 1 where any of that does not hold.
"""

import argparse
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import cycle
from pathlib import Path
from random import Random

import psutil

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench.kills_site import STATES, Manifest, Site, clean_manifests  # noqa: E402 - as above

_LONGEST = 120
_PATIENCE = 15
_LOOK = 0.01
WAYS = (
    ("the build", signal.SIGKILL),
    ("the build", signal.SIGTERM),
    ("a process of it", signal.SIGKILL),
    ("a process of it", signal.SIGTERM),
)
"""Whom a signal hits, and which one."""


@dataclass(frozen=True)
class Hit:
    """One build that was hit: by what, how it ended, and what was wrong afterwards.

    `status` is the build's exit status, negative for a signal; `was_early` tells that the build
    had ended, or had no process of its own, when it was to be hit. `broken` is empty when all is
    well.
    """

    whom: str
    number: signal.Signals
    status: int
    found: str
    was_early: bool
    broken: tuple[str, ...]
    said: str = ""


def main(arguments: list[str]) -> int:
    """Kill as many builds as asked for, and print what came of it."""
    parser = argparse.ArgumentParser(description="Kill builds at random moments.")
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    with tempfile.TemporaryDirectory(prefix="kills-") as kept:
        hits = kill_builds(Site(Path(kept, "site")), asked.kills, asked.seed)
    return tell(hits)


def tell(hits: list[Hit]) -> int:
    """Print the counts, and every hit that broke something; return the status."""
    for hit in hits:
        if hit.broken:
            print(f"{hit.number.name} to {hit.whom}: {'; '.join(hit.broken)}\n{hit.said}")
    counts = Counter((hit.whom, hit.number.name, hit.status, hit.found) for hit in hits)
    for (whom, number, status, found), count in sorted(counts.items()):
        print(f"{count:>4} {number} to {whom:<16} ended with {status:>4}, published: {found}")
    early = sum(hit.was_early for hit in hits)
    broken = sum(bool(hit.broken) for hit in hits)
    print(f"{len(hits)} builds, {early} of them not hit in time: {broken} broken")
    return 1 if broken else 0


def kill_builds(site: Site, kills: int, seed: int = 1) -> list[Hit]:
    """Hit so many builds of a site that nothing was built of, and return what came of each."""
    draw = Random(seed)  # noqa: S311 - no secret
    whole = clean_manifests(site)
    longest = {is_cold: _seconds_of_a_build(site, is_cold=is_cold) for is_cold in (True, False)}
    hits = []
    ways = cycle(WAYS)
    for _, state in zip(range(kills), cycle(STATES), strict=False):
        is_cold = draw.random() < 0.5
        if is_cold:
            shutil.rmtree(site.cache, ignore_errors=True)
        site.write(state)
        hits.append(hit_build(site, state, whole, next(ways), draw.random() * longest[is_cold]))
    return hits


def _seconds_of_a_build(site: Site, *, is_cold: bool) -> float:
    """Return how long a build of another state takes, which finds nothing or all it may find."""
    shutil.rmtree(site.cache, ignore_errors=True)
    for state in () if is_cold else (STATES[1], STATES[0]):
        site.write(state)
        site.build()
    site.write(STATES[1])
    began = time.monotonic()
    site.build()
    return time.monotonic() - began


def hit_build(
    site: Site,
    state: str,
    whole: Mapping[str, Manifest],
    way: tuple[str, signal.Signals],
    delay: float,
) -> Hit:
    """Build the site in its new `state`, hit the build after `delay` seconds, and look at it."""
    whom, number = way
    process = subprocess.Popen(
        site.command(),
        env=site.environment,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    build = psutil.Process(process.pid)
    time.sleep(delay)
    crew = _crew_of(build)
    while whom != "the build" and not crew and process.poll() is None:
        time.sleep(_LOOK)
        crew = _crew_of(build)
    was_early = not _send(number, build if whom == "the build" else next(iter(crew), None))
    said, _ = process.communicate(timeout=_LONGEST)
    _, left = psutil.wait_procs(crew, timeout=_PATIENCE)
    found = next((name for name in STATES if site.manifest() == whole[name]), "neither state")
    broken = [f"{len(left)} processes were left"] if left else []
    broken += ["what is published is neither state"] if found not in STATES else []
    if process.returncode == 0 and found != state:
        broken.append("it ended well and published the old state")
    broken += _look_at_next_build(site, whole[state])
    return Hit(
        whom,
        number,
        process.returncode,
        "new" if found == state else "old" if found in STATES else found,
        was_early,
        tuple(broken),
        said,
    )


def _crew_of(build: psutil.Process) -> list[psutil.Process]:
    """Return the processes that a build has started, those that work for it first."""
    try:
        crew = build.children(recursive=True)
        return sorted(crew, key=lambda one: "spawn_main" not in " ".join(one.cmdline()))
    except psutil.NoSuchProcess:
        return []


def _send(number: signal.Signals, process: psutil.Process | None) -> bool:
    """Send a signal; False where nobody is there to get it."""
    try:
        if process is None or process.status() == psutil.STATUS_ZOMBIE:
            return False
        process.send_signal(number)
    except psutil.NoSuchProcess:
        return False
    return True


def _look_at_next_build(site: Site, wanted: Manifest) -> list[str]:
    """Return what is wrong with the next build and what it leaves."""
    built = site.build()
    broken = []
    if built.returncode:
        broken.append(f"the next build ended with {built.returncode}: {built.stderr}")
    if site.manifest() != wanted:
        broken.append("the next build did not publish the new state")
    if site.beside():
        broken.append(f"left beside it: {', '.join(site.beside())}")
    return broken


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
