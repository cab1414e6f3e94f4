"""Work is done in order, in one process or in several, whatever becomes of these."""

import os
import signal
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.site.bug import Bug, attempt
from sitegen.site.workforce import Workforce, sensible_jobs


def test_one_job_stays_in_this_process() -> None:
    with Workforce(1) as work:
        processes = set(work(_process, range(3), _lost))

    assert processes == {os.getpid()}


def test_several_jobs_are_other_processes() -> None:
    with Workforce(2) as work:
        processes = set(work(_process, range(3), _lost))

    assert os.getpid() not in processes


def test_little_work_starts_no_process() -> None:
    with Workforce() as work:
        processes = set(work(_process, range(3), _lost))

    assert processes == {os.getpid()}


@pytest.mark.parametrize("jobs", [1, 2])
def test_results_keep_the_order_of_the_items(jobs: int) -> None:
    with Workforce(jobs) as work:
        assert list(work(abs, [-3, 1, -2], _lost)) == [3, 1, 2]


@pytest.mark.parametrize(
    ("count", "processors", "jobs"), [(0, 4, 1), (7, 4, 1), (16, 4, 2), (500, 4, 4), (500, 1, 1)]
)
def test_a_process_is_started_when_it_is_worth_it(count: int, processors: int, jobs: int) -> None:
    assert sensible_jobs(count, processors) == jobs


@pytest.mark.skipif(sys.platform == "win32", reason="no SIGKILL there")
def test_a_process_that_is_ended_once_costs_nothing(tmp_path: Path) -> None:
    items = [str(tmp_path / name) for name in "abcdef"]

    with Workforce(2) as work:
        done = list(work(_die_once_at_c, items, _lost_path))

    assert done == items


@pytest.mark.skipif(sys.platform == "win32", reason="no SIGKILL there")
def test_an_item_that_ends_its_process_is_lost_alone() -> None:
    with Workforce(2) as work:
        assert list(work(_die_at_three, range(6), _lost)) == [0, 1, 2, -3, 4, 5]
        assert list(work(_die_at_three, [7, 8], _lost)) == [7, 8]


def test_leaving_early_waits_for_nobody() -> None:
    began = time.monotonic()

    with Workforce(2) as work:
        next(work(_sleep, [0, 60, 60, 60], _lost))

    assert time.monotonic() - began < 30


@pytest.mark.parametrize("step", [lambda: float("x"), lambda: 1 / 0])
def test_whatever_a_step_raises_becomes_a_bug(step: Callable[[], float]) -> None:
    bugs: list[Bug] = []

    assert attempt(bugs, "dividing", step) is None

    assert [bug.doing for bug in bugs] == ["dividing"]
    assert "Traceback" in bugs[0].trace


def test_a_step_without_a_failure_gives_its_result() -> None:
    bugs: list[Bug] = []

    assert attempt(bugs, "counting", max, 2, 3) == 3
    assert bugs == []


def _process(_item: int) -> int:
    return os.getpid()


def _sleep(seconds: int) -> int:
    time.sleep(seconds)
    return seconds


def _die_at_three(item: int) -> int:
    if item == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    return item


def _die_once_at_c(item: str) -> str:
    path = Path(item)
    if path.name == "c" and not path.exists():
        path.touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return item


def _lost(item: int) -> int:
    return -item


def _lost_path(item: str) -> str:
    return f"{item} is lost"
