"""What tells one state of the program from another, so that nothing made by another is used."""

import hashlib
import os
import sys
from collections.abc import Iterator
from functools import cache

import sitegen

_PACKAGE = os.path.dirname(os.path.abspath(sitegen.__file__))
_LIBRARIES = (
    "brotli",
    "fonttools",
    "jinja2",
    "markdown-it-py",
    "matplotlib",
    "mdit-py-plugins",
    "mido",
    "music21",
    "rcssmin",
    "resvg",
    "rjsmin",
    "verovio",
)
"""What has a say in the bytes of a page or a download."""


@cache
def code_mark() -> str:
    """Return the hash of this program's code and of the versions of what it draws with."""
    from importlib.metadata import version  # noqa: PLC0415 - a build with nothing to do skips it

    whole = hashlib.blake2b(sys.version.encode(), digest_size=20)
    for path in sorted(_modules()):
        with open(path, "rb") as file:
            whole.update(os.path.relpath(path, _PACKAGE).encode() + b"\0" + file.read())
    for library in _LIBRARIES:
        whole.update(f"{library} {version(library)}\0".encode())
    return whole.hexdigest()


def code_times() -> str:
    """Return what changes when a module or an installed library does; no file is read for it."""
    times = {path: os.stat(path).st_mtime_ns for path in _modules()}
    # Installing into a folder of libraries changes the folder's own time.
    libraries = {path: os.stat(path).st_mtime_ns for path in sys.path if os.path.isdir(path)}
    told = repr((sys.version, sorted(times.items()), sorted(libraries.items())))
    return hashlib.blake2b(told.encode(), digest_size=20).hexdigest()


def _modules() -> Iterator[str]:
    for folder, _, names in os.walk(_PACKAGE):
        for name in names:
            if name.endswith(".py"):
                yield os.path.join(folder, name)
