"""The preview from its start to its end: a port of this machine, the site at work, signals."""

import asyncio
import errno
import os
import signal
import socket
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import uvicorn

from sitegen.kinds.kind import ChartKind
from sitegen.preview.app import make_app
from sitegen.preview.desk import Desk
from sitegen.preview.hands import Hire, WorkerHand
from sitegen.preview.hosts import HOST
from sitegen.preview.room import Room
from sitegen.preview.watching import saves
from sitegen.site.refusal import RefusedError, reason_of
from sitegen.site.theme_folder import asked_theme

PORT = 8246
"""Where the preview stands if nobody says otherwise."""

_ENDINGS = (signal.SIGINT, signal.SIGTERM)


@dataclass(frozen=True)
class PreviewOrder:
    """What to show; `jobs` are the processes beside the warm one, None for as many as fit.

    `cache` is the folder for drawn charts, None for none.
    """

    content: Path
    kinds: tuple[ChartKind, ...]
    port: int = PORT
    theme: str | None = None
    jobs: int | None = None
    cache: Path | None = None


def preview_site(order: PreviewOrder, tell: Callable[[str], None]) -> None:
    """Serve a site until Ctrl-C or SIGTERM; `tell` is given its address once it can be asked.

    Raises RefusedError for an unknown theme and for a port that is not free.
    """
    theme = _theme(order.theme)
    with closing(listen(order.port)) as own:
        hire = partial(WorkerHand, order.kinds, order.cache)
        asyncio.run(_until_told(order, theme, hire, own, tell))


def listen(port: int) -> socket.socket:
    """Return a socket that listens at a port of this machine alone; 0 stands for any free one.

    Raises RefusedError when the port is not to be had.
    """
    own = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        if os.name == "posix":  # elsewhere this would let two servers have one port
            own.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        own.bind((HOST, port))
        own.listen()
    except OSError as wrong:
        own.close()
        raise RefusedError(_refusal(port, wrong)) from wrong
    return own


def _refusal(port: int, wrong: OSError) -> str:
    if wrong.errno == errno.EADDRINUSE:
        return (
            f"port {port} is in use, perhaps by another preview: "
            "end that one, or choose another port with --port, 0 for any that is free"
        )
    why = reason_of(wrong)
    return f"port {port} is not to be had: {why}; choose another with --port, 0 for any"


def _theme(name: str | None) -> Path | None:
    return None if name is None else asked_theme(name).resolve()


async def _until_told(
    order: PreviewOrder,
    theme: Path | None,
    hire: Hire,
    own: socket.socket,
    tell: Callable[[str], None],
) -> None:
    stop = asyncio.Event()
    with _told_to_end(stop):
        tell(f"http://{HOST}:{own.getsockname()[1]}/")
        jobs = order.jobs or max(1, (os.cpu_count() or 1) - 1)
        await serve(order.content.resolve(), theme, hire, jobs, own, stop)


async def serve(
    content: Path,
    theme: Path | None,
    hire: Hire,
    jobs: int,
    own: socket.socket,
    stop: asyncio.Event,
) -> None:
    """Serve the site of a content folder, a whole path, at a listening socket until told."""
    desk = Desk(content, theme)
    room = Room(desk, hire, jobs)
    config = uvicorn.Config(
        make_app(room, own.getsockname()[1]),
        log_config=None,
        access_log=False,
        server_header=False,
        lifespan="off",
        ws="none",
        timeout_graceful_shutdown=1,
    )
    server = _Server(config)
    work = asyncio.create_task(room.work(saves(lambda: (content, desk.theme_folder))))
    told = asyncio.create_task(stop.wait())
    serving = asyncio.create_task(server.serve(sockets=[own]))
    try:
        await asyncio.wait({work, told}, return_when=asyncio.FIRST_COMPLETED)
    finally:
        server.should_exit = True
        for task in (told, work):
            task.cancel()
        with suppress(asyncio.CancelledError):
            await work
        await serving
        desk.close()


class _Server(uvicorn.Server):
    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Leave signals alone: the preview ends its processes before the server."""
        yield


@contextmanager
def _told_to_end(stop: asyncio.Event) -> Iterator[None]:
    """Set `stop` at the signals that end a program."""
    loop = asyncio.get_running_loop()

    def end(*_: object) -> None:
        loop.call_soon_threadsafe(stop.set)

    before = {number: signal.signal(number, end) for number in _ENDINGS}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
