"""Builds are killed as `tests/bench/kills.py` kills two hundred, and its look is tried out."""

import shutil
import signal
import sys
from pathlib import Path

import pytest
from bench.kills import hit_build, kill_builds
from bench.kills_site import STATES, Site, clean_manifests

pytestmark = pytest.mark.skipif(
    sys.platform not in {"linux", "darwin"}, reason="two folders are not exchanged in one step"
)


def test_a_killed_build_leaves_a_whole_site(tmp_path: Path) -> None:
    hits = kill_builds(Site(tmp_path), 2, seed=5)

    assert len(hits) == 2
    assert [hit.broken for hit in hits] == [()] * 2


def test_a_broken_site_would_be_seen(tmp_path: Path) -> None:
    site = Site(tmp_path)
    whole = clean_manifests(site)
    wrong = {**whole, STATES[0]: {**whole[STATES[0]], "index.html": "another"}}
    shutil.rmtree(site.out)
    site.write(STATES[0])

    hit = hit_build(site, STATES[0], wrong, ("the build", signal.SIGKILL), 0)

    assert "what is published is neither state" in hit.broken
    assert "the next build did not publish the new state" in hit.broken
