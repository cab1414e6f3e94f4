"""Work is done in order, in one process or in several."""

import os
from collections.abc import Callable

import pytest

from sitegen.site.bug import Bug, attempt
from sitegen.site.workforce import hire, sensible_jobs


def test_one_job_stays_in_this_process() -> None:
    with hire(1) as work:
        processes = set(work(_process, range(3)))

    assert processes == {os.getpid()}


def test_several_jobs_are_other_processes() -> None:
    with hire(2) as work:
        processes = set(work(_process, range(3)))

    assert os.getpid() not in processes


@pytest.mark.parametrize("jobs", [1, 2])
def test_results_keep_the_order_of_the_items(jobs: int) -> None:
    with hire(jobs) as work:
        assert list(work(abs, [-3, 1, -2])) == [3, 1, 2]


@pytest.mark.parametrize(
    ("count", "processors", "jobs"), [(0, 4, 1), (7, 4, 1), (16, 4, 2), (500, 4, 4), (500, 1, 1)]
)
def test_a_process_is_started_when_it_is_worth_it(count: int, processors: int, jobs: int) -> None:
    assert sensible_jobs(count, processors) == jobs


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
