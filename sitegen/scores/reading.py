"""A score file read by a process of its own, with bounds on its time and memory."""

import subprocess
import sys
from functools import lru_cache
from pathlib import Path

import msgspec

from sitegen.scores.found import FoundScore
from sitegen.scores.safety import LARGEST, ScoreError, read_plain, read_xml, unpack

__all__ = ["SUFFIXES", "ScoreError", "read_score"]

SUFFIXES = {
    ".musicxml": "musicxml",
    ".xml": "musicxml",
    ".mxl": "mxl",
    ".abc": "abc",
    ".krn": "humdrum",
    ".mid": "midi",
    ".midi": "midi",
}
"""The kinds of score files that are read, by how their names end."""
PATIENCE = 60
"""Seconds that a reader may take, its start included."""
_LONGEST_ANSWER = 50_000_000
_HOME = Path(__file__).parents[2]


def read_score(data: bytes, suffix: str) -> FoundScore:
    """Return what is in a score file whose name ends in `suffix`.

    Raises ScoreError for a file that is no score of that kind, is too large, or asks for more than
    reading.
    """
    found = _read(data, suffix)
    if isinstance(found, str):
        raise ScoreError(found)
    return found


@lru_cache(maxsize=16)
def _read(data: bytes, suffix: str) -> FoundScore | str:
    """Return a score, or why there is none: while its text is written, a file is read often."""
    try:
        return _ask(*_checked(data, SUFFIXES[suffix]))
    except ScoreError as wrong:
        return str(wrong)


def _checked(data: bytes, form: str) -> tuple[bytes, str]:
    """Return the bytes that a reader may see, and what kind of score they are."""
    if len(data) > LARGEST:
        raise ScoreError(f"it has more than {LARGEST // 1_000_000} MB")
    if form == "mxl":
        data, form = unpack(data), "musicxml"
    if form == "midi":
        return data, form
    text = read_xml(data) if form == "musicxml" else read_plain(data)
    return text.encode(), form


def _ask(data: bytes, form: str) -> FoundScore:
    command = [sys.executable, "-m", "sitegen.scores.child", form]
    try:
        done = subprocess.run(  # noqa: S603 - this very Python, with a word of ours
            command,
            input=data,
            capture_output=True,
            timeout=PATIENCE,
            check=False,
            # A process that is started by a module's name finds what lies in its folder first:
            # that must not be the folder of somebody's write-ups.
            cwd=_HOME,
        )
    except subprocess.TimeoutExpired as wrong:
        raise ScoreError(f"reading it takes longer than {PATIENCE} seconds") from wrong
    if done.returncode:
        raise ScoreError("reading it takes more memory or time than any score should")
    try:
        return msgspec.json.decode(done.stdout[:_LONGEST_ANSWER], type=FoundScore)
    except msgspec.MsgspecError:
        pass
    try:
        reason = msgspec.json.decode(done.stdout, type=dict[str, str])["error"]
    except (msgspec.MsgspecError, KeyError):
        reason = "it cannot be read"
    raise ScoreError(reason)
