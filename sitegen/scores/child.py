"""The process that reads one score: its kind is the argument, the file comes in, JSON goes out.

It gives itself bounds before it reads, so that a file which is made to fill the memory ends this
process and no other.
"""

import contextlib
import io
import os
import sys
import warnings

import msgspec

MEMORY = 2_000_000_000
"""Bytes of address space: music21 itself takes about a third of it."""
SECONDS = 45


def main(form: str) -> int:
    """Read the score on standard input and write what is found to standard output."""
    _bound()
    data = sys.stdin.buffer.read()
    out = sys.stdout.buffer
    try:
        # A library that prints must not spoil the answer.
        with contextlib.redirect_stdout(io.StringIO()), warnings.catch_warnings():
            warnings.simplefilter("ignore")
            from sitegen.scores.music import find_score  # noqa: PLC0415 - after the bounds are set

            answer: object = find_score(data, form)
    except MemoryError:
        return 1
    except Exception as wrong:  # noqa: BLE001 - whatever a damaged file brings a reader to raise
        answer = {"error": _reason(wrong)}
    out.write(msgspec.json.encode(answer))
    out.flush()
    return 0


def _bound() -> None:
    try:
        import resource  # noqa: PLC0415 - not on every system
    except ImportError:
        return
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
    with contextlib.suppress(ValueError, OSError):
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    with contextlib.suppress(ValueError, OSError):
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def _reason(wrong: Exception) -> str:
    from sitegen.scores.unfit import UnfitScoreError  # noqa: PLC0415 - as above

    if isinstance(wrong, UnfitScoreError):
        return str(wrong)
    said = " ".join(str(wrong).split())[:120]
    return f"it is no score of its kind that can be read{f': {said}' if said else ''}"


if __name__ == "__main__":
    status = main(sys.argv[1])
    sys.stdout.flush()
    # Without the clearing up of a large library, which takes longer than its reading.
    os._exit(status)
