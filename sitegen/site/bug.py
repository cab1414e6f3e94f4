"""What is kept of a failure of the program itself, so that the other write-ups go on."""

import traceback
from collections.abc import Callable
from dataclasses import dataclass
from typing import ParamSpec, TypeVar

from sitegen.site.refusal import RefusedError

Result = TypeVar("Result")
Given = ParamSpec("Given")


@dataclass(frozen=True)
class Bug:
    """A failure: what was being done, in words, and the trace for whoever mends it."""

    doing: str
    trace: str


def attempt(
    bugs: list[Bug],
    doing: str,
    step: Callable[Given, Result],
    *args: Given.args,
    **kwargs: Given.kwargs,
) -> Result | None:
    """Return what `step` returns; when it raises, add a bug and return None.

    Raises RefusedError as the step does: what the system refuses is no bug.
    """
    try:
        return step(*args, **kwargs)
    except RefusedError:
        raise
    except Exception:  # noqa: BLE001 - whatever a step raises, it is a bug and is reported as one
        bugs.append(Bug(doing, traceback.format_exc()))
        return None


def lost_process(doing: str) -> Bug:
    """Return the failure of a task whose process was ended from outside each time it was tried."""
    trace = "The process ended twice; the computer may lack memory."
    return Bug(f"{doing}, whose process was ended from outside", trace)
