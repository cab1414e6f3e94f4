"""The event streams of open pages: each is told when the state of its page is another one."""

import asyncio
import json
from collections.abc import AsyncIterator, Callable, Iterator, Mapping
from contextlib import contextmanager

BEAT = 15.0
"""Seconds after which an idle stream sends a comment, so that a lost reader is noticed."""

State = Mapping[str, object]


class Stream:
    """What one open page is told; only the latest state counts."""

    def __init__(self) -> None:
        self._state: State | None = None
        self._is_new = asyncio.Event()
        self._has_ended = False

    def tell(self, state: State) -> None:
        """Send a state, unless it was the last one."""
        if state != self._state:
            self._state = state
            self._is_new.set()

    def end(self) -> None:
        """Let the reader go."""
        self._has_ended = True
        self._is_new.set()

    async def lines(self) -> AsyncIterator[str]:
        """Yield the stream as the WHATWG standard has it (HTML, 9.2 Server-sent events)."""
        while not self._has_ended:
            try:
                async with asyncio.timeout(BEAT):
                    await self._is_new.wait()
            except TimeoutError:
                yield ": still here\n\n"
                continue
            self._is_new.clear()
            if not self._has_ended:
                yield f"event: state\ndata: {json.dumps(self._state)}\n\n"


class Streams:
    """All open pages by their address; `state_of` says what a page is to be told."""

    def __init__(self, state_of: Callable[[str], State]) -> None:
        self._state_of = state_of
        self._open: dict[str, set[Stream]] = {}
        self._has_ended = False

    def addresses(self) -> tuple[str, ...]:
        """Return the pages that somebody looks at."""
        return tuple(self._open)

    @contextmanager
    def follow(self, address: str) -> Iterator[Stream]:
        """Yield a stream that is told of the page at `address` from now on."""
        stream = Stream()
        self._open.setdefault(address, set()).add(stream)
        stream.tell(self._state_of(address))
        if self._has_ended:
            stream.end()
        try:
            yield stream
        finally:
            self._open[address].discard(stream)
            if not self._open[address]:
                del self._open[address]

    def tell(self) -> None:
        """Tell every open page its state."""
        for address, streams in self._open.items():
            state = self._state_of(address)
            for stream in streams:
                stream.tell(state)

    def end(self) -> None:
        """Let all readers go, and whoever comes later."""
        self._has_ended = True
        for streams in self._open.values():
            for stream in streams:
                stream.end()
