"""A folder served on this machine, as a plain host serves it."""

import functools
import http.server
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any


@contextmanager
def served(folder: Path, at: str = "/") -> Iterator[str]:
    """Serve a folder and give the address under which its top stands.

    `at` is the path of that address; nothing is found above it.
    """
    with listening(functools.partial(_Quiet, directory=str(folder), at=at)) as top:
        yield top.removesuffix("/") + at


@contextmanager
def listening(handler: Callable[..., http.server.BaseHTTPRequestHandler]) -> Iterator[str]:
    """Answer requests at a free port, each by a new `handler`, and give the address."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def __init__(self, *given: Any, at: str, **named: Any) -> None:  # noqa: ANN401 - the base's
        self.at = at
        super().__init__(*given, **named)

    def translate_path(self, path: str) -> str:
        """Return the file of a path, one that is not there for what lies above the top."""
        below = path.removeprefix(self.at) if path.startswith(self.at) else "nothing/here"
        return super().translate_path(f"/{below}")

    def copyfile(self, source: Any, outputfile: Any) -> None:  # noqa: ANN401 - as in the base class
        """Send a file; a page that is left while it loads wants no more of it."""
        with suppress(ConnectionError):
            super().copyfile(source, outputfile)

    def log_message(self, *_: object) -> None:
        """Print nothing."""
