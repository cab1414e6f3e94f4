"""What the server answers: pages with the preview's script, their files, and event streams.

A path is only ever looked up among the names of what was made and of what a write-up shows; none
is put together to be opened.
"""

import mimetypes
from collections.abc import AsyncIterator
from functools import cache
from pathlib import Path
from urllib.parse import quote

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, RedirectResponse, Response, StreamingResponse
from starlette.routing import Route

from sitegen.preview.bare import bare_page, with_script
from sitegen.preview.desk import NEVER_MADE, TOP
from sitegen.preview.hosts import OnlyHere
from sitegen.preview.room import NOT_THERE, Room
from sitegen.site.addresses import INDEX, MISSING
from sitegen.site.content import ARTICLES_FOLDER

OWN = "~preview"
"""Where the preview's own things stand: no write-up and no page can have that address."""

_HEADERS = {
    "Cache-Control": "no-store",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
}
_SCRIPT = Path(__file__).parent / "page" / "live.js"


def make_app(room: Room, port: int) -> OnlyHere:
    """Return the server's application for a site at a port of this machine."""
    answer = _Answer(room)
    routes = [
        Route(f"/{OWN}/live.js", answer.script),
        Route(f"/{OWN}/events", answer.events),
        Route("/{path:path}", answer.file),
    ]
    return OnlyHere(Starlette(routes=routes), port)


def place_of(path: str) -> tuple[str, str]:
    """Return the address of the page that a path belongs to, and the file's name in its folder."""
    first, _, rest = path.partition("/")
    if not rest and "/" not in path:
        return (TOP, first) if "." in first or not first else (f"{first}/", "")
    if first != ARTICLES_FOLDER:
        return f"{first}/", rest
    slug, _, name = rest.partition("/")
    return f"{first}/{slug}/", name


class _Answer:
    def __init__(self, room: Room) -> None:
        self._room = room

    async def script(self, _: Request) -> Response:
        return Response(_script(), media_type="text/javascript", headers=_HEADERS)

    async def events(self, request: Request) -> Response:
        path = request.query_params.get("page", "").lstrip("/")
        address, name = place_of(path)
        # A file that is missing is no page; its path stands for no page either.
        address = address if name in {"", INDEX} else path
        return StreamingResponse(
            self._lines(address), media_type="text/event-stream", headers=_HEADERS
        )

    async def _lines(self, address: str) -> AsyncIterator[str]:
        with self._room.streams.follow(address) as stream:
            self._room.open(address)
            async for line in stream.lines():
                yield line

    async def file(self, request: Request) -> Response:
        path = request.path_params["path"]
        address, name = place_of(path)
        if address == TOP and name in {"", INDEX}:
            return await self._page(TOP)
        if not self._room.is_known(address):
            return await self._at_top(path, request.url.query)
        if not name and not path.endswith("/"):
            return RedirectResponse(f"/{quote(address)}", headers=_HEADERS)
        if name in {"", INDEX}:
            return await self._page(address)
        return await self._beside(address, name)

    async def _at_top(self, path: str, query: str) -> Response:
        """Return a file at the top of the site; a folder shows its index, as hosts have it."""
        asset = await self._room.asset(path)
        if asset is not None:
            return _response(path, asset)
        folder = f"{path.rstrip('/')}/"
        index = await self._room.asset(f"{folder}{INDEX}")
        if index is None:
            return await self._lost()
        if path != folder:
            return RedirectResponse(f"/{quote(folder)}?{query}", headers=_HEADERS)
        return _response(INDEX, index)

    async def _page(self, address: str) -> Response:
        """Return a page as it is now, a bare one where there never was any."""
        page = await self._room.page(address)
        html = None if page is None else self._room.index(address, page)
        if page is None or html is None:
            return _html(bare_page(self._room.remarks(address)), NEVER_MADE)
        return _html(html, page.digest)

    async def _lost(self) -> Response:
        """Return the page for lost readers, which stands at the top of the site."""
        page = await self._room.page(TOP)
        html = None if page is None else self._room.files(page).get(MISSING)
        return _html(html or bare_page(self._room.remarks(TOP)), NOT_THERE, 404)

    async def _beside(self, address: str, name: str) -> Response:
        page = await self._room.page(address)
        data = None if page is None else self._room.files(page).get(name)
        if data is not None:
            return _response(name, data)
        path = self._room.attachment(address, name)
        return await self._lost() if path is None else FileResponse(path, headers=_HEADERS)


def _html(page: bytes, state: str, status: int = 200) -> Response:
    whole = with_script(page, f"/{OWN}/live.js", state)
    return Response(whole, status, media_type="text/html", headers=_HEADERS)


def _response(name: str, data: bytes) -> Response:
    kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
    return Response(data, media_type=kind, headers=_HEADERS)


@cache
def _script() -> bytes:
    return _SCRIPT.read_bytes()
