"""Who may ask the server: only a browser on this machine that was sent to this very server.

A page somewhere in the net can have its own name lead to 127.0.0.1 and so read what is served
there (DNS rebinding). It cannot have the browser send another name than its own.
"""

from starlette.datastructures import Headers
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Receive, Scope, Send

HOST = "127.0.0.1"
_HTTP_PORT = 80
_MISDIRECTED = 421  # RFC 9110, 15.5.20


class OnlyHere:
    """Answers requests to this machine's own names with the server's port, and no others."""

    def __init__(self, app: ASGIApp, port: int) -> None:
        self._app = app
        names = (HOST, "localhost")
        self._hosts = {f"{name}:{port}" for name in names}
        if port == _HTTP_PORT:
            self._hosts |= set(names)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        if scope["type"] == "http" and not self._is_ours(Headers(scope=scope)):
            words = "This is the preview of a site; ask for it by the address that it told."
            await PlainTextResponse(words, _MISDIRECTED)(scope, receive, send)
            return
        await self._app(scope, receive, send)

    def _is_ours(self, headers: Headers) -> bool:
        hosts = headers.getlist("host")
        return len(hosts) == 1 and hosts[0].lower() in self._hosts
