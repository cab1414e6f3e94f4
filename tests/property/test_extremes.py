"""Extremes are told at a place or read, within a bound of time."""

from pathlib import Path

import pytest
from property.extremes import READ, REFUSED
from property.trial import check_article, new_content

BOUND = 120.0
"""Seconds, however busy the machine is: each takes one or two."""


@pytest.mark.parametrize("name", REFUSED)
def test_what_goes_too_far_is_told(name: str, tmp_path: Path) -> None:
    data = REFUSED[name].encode("utf-8", "surrogatepass")

    outcome = check_article(new_content(tmp_path), data, BOUND)

    assert outcome.is_well, outcome
    assert outcome.errors


@pytest.mark.parametrize("name", READ)
def test_what_is_only_much_is_read(name: str, tmp_path: Path) -> None:
    outcome = check_article(new_content(tmp_path), READ[name].encode(), BOUND)

    assert outcome.is_well, outcome
    assert not outcome.errors
