"""The engraver's toolkit: verovio, loaded when first used, one a process."""

import atexit
import os
import tempfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import IO, Any, TypeVar

_Result = TypeVar("_Result")
_STANDARD_ERROR = 2
_ERROR = "[Error]"


class EngravingError(RuntimeError):
    """The engraver refused a file: a bug in what was written for it, never the author's fault."""


@lru_cache(maxsize=1)
def _toolkit() -> Any:  # noqa: ANN401 - verovio's class has no types
    import verovio  # noqa: PLC0415 - heavy, and only needed where something is drawn

    toolkit = verovio.toolkit()
    # It would look into every file to find out what it is.
    toolkit.setInputFrom("mei")
    return toolkit


@dataclass(frozen=True)
class Rendering:
    """A page as verovio draws it, and what it had to say about the file: "" when all is well."""

    svg: str
    remarks: str


def render(mei: str, options: Mapping[str, object]) -> Rendering:
    """Return an MEI file's only page.

    Raises EngravingError when verovio cannot read the file or reports an error; what it only
    remarks on is drawn as well as it can be.
    """
    toolkit = _toolkit()

    def draw() -> str:
        _set_options(options)
        return str(toolkit.renderToSVG(1)) if toolkit.loadData(mei) else ""

    svg, remarks = _overheard(draw)
    if not svg or _ERROR in remarks:
        raise EngravingError(remarks or "the file could not be read")
    return Rendering(svg, remarks)


def _set_options(options: Mapping[str, object]) -> None:
    """Give the toolkit these options and no others; those that it has already cost nothing."""
    toolkit, had = _toolkit(), _options_set()
    if had.keys() != options.keys():
        toolkit.resetOptions()
        had.clear()
    new = {name: value for name, value in options.items() if had.get(name) != value}
    if new:
        toolkit.setOptions(new)
        had.update(new)


@lru_cache(maxsize=1)
def _options_set() -> dict[str, object]:
    """Return the options that the toolkit has been given, to be kept up to date."""
    return {}


def _overheard(call: Callable[[], _Result]) -> tuple[_Result, str]:
    """Return what `call` returns and what it wrote to file descriptor 2, verovio's only log."""
    log = _log()
    kept = os.dup(_STANDARD_ERROR)
    try:
        os.dup2(log.fileno(), _STANDARD_ERROR)
        result = call()
    finally:
        os.dup2(kept, _STANDARD_ERROR)
        os.close(kept)
    return result, _taken(log)


@lru_cache(maxsize=1)
def _log() -> IO[bytes]:
    """Return the file that takes what is written to the log, empty between two calls."""
    log = tempfile.TemporaryFile(buffering=0)  # noqa: SIM115 - open as long as the process
    atexit.register(log.close)
    return log


def _taken(log: IO[bytes]) -> str:
    """Return what stands in the log and empty it."""
    if not log.tell():
        return ""
    log.seek(0)
    said = log.read().decode("utf-8", "replace").strip()
    log.seek(0)
    log.truncate()
    return said
