"""What all tests share: options, hypothesis profiles, and no silent skip where all is needed.

Where SITEGEN_NEED_ALL is set, as in CI, a skipped test fails: a missing browser or schema must
not pass for a check.
"""

import os
import shutil
from collections.abc import Generator
from pathlib import Path

import pytest
from hypothesis import settings

NEED_ALL = bool(os.environ.get("SITEGEN_NEED_ALL"))

settings.register_profile("default", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "default"))


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option that writes golden files anew."""
    text = "write golden files anew; the run fails all the same"
    parser.addoption("--update-golden", action="store_true", help=text)


@pytest.fixture(scope="session", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Generator[None]:
    """Keep what the tests build out of the user's own cache folder."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture(scope="session")
def chromium() -> str:
    """Return the path of a Chromium; the test is skipped where there is none."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if found is None:
        pytest.skip("no Chromium is installed")
    return found


@pytest.fixture(scope="session")
def mei_schema() -> Path:
    """Return the RelaxNG schema of MEI 5.1; the test is skipped where it is not told."""
    named = os.environ.get("SITEGEN_MEI_SCHEMA")
    if not named:
        pytest.skip("SITEGEN_MEI_SCHEMA does not name the file mei-all.rng of MEI 5.1")
    return Path(named)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Turn a skip into a failure where nothing may be left out."""
    report = yield
    if NEED_ALL and report.skipped and not hasattr(report, "wasxfail"):
        _fail(report)
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report() -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """Turn the skip of a whole module into a failure where nothing may be left out."""
    report = yield
    if NEED_ALL and report.skipped:
        _fail(report)
    return report


def _fail(report: pytest.TestReport | pytest.CollectReport) -> None:
    reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else report.longrepr
    report.outcome = "failed"
    report.longrepr = f"SITEGEN_NEED_ALL is set, and this was left out: {reason}"
