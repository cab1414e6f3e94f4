"""A damaged article is read or refused at a place in it: no failure, no hang, no lost fault."""

import time
from pathlib import Path
from random import Random

import pytest
from property import trial
from property.damage import WOUNDS, damage, originals
from property.trial import Outcome, check_article, has_place, new_content

from sitegen.diagnostics import fault
from sitegen.site.inspection import Inspection
from sitegen.source import Source, Span

PARTS, EACH = 10, 30


@pytest.mark.parametrize("seed", range(PARTS))
def test_a_damaged_article_is_read_or_refused(seed: int, tmp_path: Path) -> None:
    rng, articles = Random(f"damage {seed}"), originals()  # noqa: S311 - reproducible, no secret
    path = new_content(tmp_path)
    for _ in range(EACH):
        data = damage(rng, articles)
        outcome = check_article(path, data)
        assert outcome.is_well, (outcome, data)


def test_the_articles_are_damaged_in_many_ways() -> None:
    articles = originals()
    made = [damage(Random(number), articles) for number in range(200)]  # noqa: S311 - as above

    assert made == [damage(Random(number), articles) for number in range(200)]  # noqa: S311
    assert len(set(made)) > 180
    assert len(articles) > 100
    assert len(set(WOUNDS)) > 5


def test_a_failure_a_hang_and_a_fault_without_a_place_are_seen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = new_content(tmp_path)

    def seen(what: object) -> Outcome:
        monkeypatch.setattr(trial, "inspect", what)
        return check_article(path, b"", bound=0.2)

    def sleep(*_: object) -> None:
        time.sleep(30)

    def fail(*_: object) -> None:
        raise ZeroDivisionError

    def lose(*_: object) -> Inspection:
        lost = fault("pitch", Source("a.md", "one line"), Span(2, 1, 2, 2), "no pitch")
        return Inspection((lost,), (), 1, 0)

    assert seen(sleep).hung
    assert seen(fail).traces
    assert seen(lose).lost


@pytest.mark.parametrize(
    ("span", "found"),
    [
        (Span(1, 1, 1, 4), True),
        (Span(1, 4, 1, 4), True),
        (Span(0, 1, 1, 1), False),
        (Span(1, 5, 1, 6), False),
        (Span(1, 0, 1, 1), False),
        (Span(1, 3, 1, 2), False),
        (Span(1, 1, 2, 1), False),
    ],
)
def test_a_place_is_one_that_the_file_has(span: Span, *, found: bool) -> None:
    assert has_place(fault("pitch", Source("a.md", "one"), span, "no pitch")) is found
