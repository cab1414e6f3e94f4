"""A small site on a preview that works in this process, and what asks it."""

import asyncio
import http.client
import json
import threading
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, closing, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from unit.site.conftest import CLAPS, HEAD, write_theme

from sitegen.preview.hands import Answer, answer_of
from sitegen.preview.hosts import HOST
from sitegen.preview.jobs import Job
from sitegen.preview.making import Maker
from sitegen.preview.serving import listen, serve

PATIENCE = 60
"""Seconds after which a test gives up waiting for something that should come at once."""

Write = Callable[..., Path]


class HandHere:
    """Makes pages in a thread of this process, and writes down what it was asked."""

    def __init__(self, asked: list[Job]) -> None:
        self._maker = Maker((CLAPS,), None)
        self._asked = asked

    async def do(self, job: Job) -> Answer:
        """Do a job."""
        self._asked.append(job)
        return await asyncio.to_thread(answer_of, self._maker.do, job)

    def end(self) -> None:
        """End nothing: the thread is done in no time."""


@dataclass
class Served:
    """A preview that runs, seen from a browser's side; `asked` are the jobs of its hands."""

    port: int
    asked: list[Job] = field(default_factory=list)

    def hire(self, *, behind: bool) -> HandHere:  # noqa: ARG002 - here nobody has to give way
        """Return a hand that works in this process."""
        return HandHere(self.asked)

    def get(self, path: str, host: str = "", method: str = "GET") -> tuple[int, str]:
        """Return the status and the text of an answer."""
        with self._asked(path, host, method) as response:
            return response.status, response.read().decode("utf-8", "replace")

    def headers(self, path: str) -> dict[str, str]:
        """Return the headers of an answer, their names in small letters."""
        with self._asked(path, "", "GET") as response:
            return {name.lower(): value for name, value in response.getheaders()}

    @contextmanager
    def _asked(self, path: str, host: str, method: str) -> Iterator[http.client.HTTPResponse]:
        connection = http.client.HTTPConnection(HOST, self.port, timeout=PATIENCE)
        with closing(connection):
            connection.putrequest(method, path, skip_host=True)
            connection.putheader("Host", host or f"{HOST}:{self.port}")
            connection.endheaders()
            yield connection.getresponse()

    @contextmanager
    def follow(self, path: str) -> Iterator["Followed"]:
        """Open the event stream of a page."""
        connection = http.client.HTTPConnection(HOST, self.port, timeout=PATIENCE)
        with closing(connection):
            connection.request("GET", f"/~preview/events?page={path}")
            with closing(connection.getresponse()) as response:
                yield Followed(response)


class Followed:
    """An event stream as an open page reads it."""

    def __init__(self, response: http.client.HTTPResponse) -> None:
        self._response = response

    def next(self) -> dict[str, Any]:
        """Return the next state that is told."""
        for line in self._response:
            if line.startswith(b"data: "):
                state = json.loads(line.removeprefix(b"data: "))
                assert isinstance(state, dict)
                return state
        raise EOFError

    def until(self, wanted: Callable[[dict[str, Any]], bool]) -> dict[str, Any]:
        """Return the first state that is as wanted."""
        while not wanted(state := self.next()):
            pass
        return state


Serve = Callable[[], AbstractContextManager[Served]]


@pytest.fixture
def theme(tmp_path: Path) -> Path:
    """Return the folder of a theme as small as one can be."""
    return write_theme(tmp_path / "plain")


@pytest.fixture
def content(tmp_path: Path, theme: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a content folder with its settings and no write-up."""
    monkeypatch.chdir(tmp_path)
    folder = tmp_path / "content"
    (folder / "breakdowns").mkdir(parents=True)
    (folder / "pages").mkdir()
    settings = f'title = "Side Two"\ntheme = "{theme.as_posix()}"\n'
    (folder / "site.toml").write_text(settings, encoding="utf-8")
    return folder


@pytest.fixture
def write(content: Path) -> Write:
    """Return what writes a write-up as a careful editor does: beside its place, then renamed."""

    def write(
        slug: str, words: str = "Words.", *, title: str = "", more: str = "", status: str = "draft"
    ) -> Path:
        path = content / "breakdowns" / slug / "article.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        head = HEAD.format(title=title or slug, status=status, more=more)
        fresh = path.with_name("article.md.new")
        fresh.write_text(head + words + "\n", encoding="utf-8")
        fresh.replace(path)
        return path

    return write


@pytest.fixture
def preview(content: Path) -> Serve:
    """Return what runs a preview of the content folder for a block."""

    @contextmanager
    def run() -> Iterator[Served]:
        with closing(listen(0)) as own:
            served = Served(own.getsockname()[1])
            stop = asyncio.Event()
            loop = asyncio.new_event_loop()

            def work() -> None:
                loop.run_until_complete(serve(content, None, served.hire, 1, own, stop))
                loop.run_until_complete(loop.shutdown_asyncgens())
                loop.run_until_complete(loop.shutdown_default_executor())

            thread = threading.Thread(target=work)
            thread.start()
            try:
                yield served
            finally:
                loop.call_soon_threadsafe(stop.set)
                thread.join(PATIENCE)
                assert not thread.is_alive()
                loop.close()

    return run
