"""Each open page is told its latest state once, and let go at the end."""

import asyncio
import json
from typing import Any

from sitegen.preview.streams import Streams


def told(line: str) -> Any:  # noqa: ANN401 - what JSON holds
    kind, data, *rest = line.split("\n")
    assert kind == "event: state"
    assert rest == ["", ""]
    return json.loads(data.removeprefix("data: "))


def test_a_page_is_told_its_latest_state_and_nothing_twice() -> None:
    states: dict[str, dict[str, object]] = {"a/": {"page": 1}}

    async def follow() -> list[object]:
        streams = Streams(lambda address: states[address])
        with streams.follow("a/") as stream:
            lines = stream.lines()
            seen = [told(await anext(lines))]
            streams.tell()
            for page in (2, 3):
                states["a/"] = {"page": page}
                streams.tell()
            seen.append(told(await anext(lines)))
            streams.end()
            seen += [line async for line in lines]
        assert streams.addresses() == ()
        return seen

    assert asyncio.run(follow()) == [{"page": 1}, {"page": 3}]


def test_who_comes_after_the_end_is_let_go() -> None:
    async def follow() -> list[str]:
        streams = Streams(lambda _: {})
        streams.end()
        with streams.follow("a/") as stream:
            return [line async for line in stream.lines()]

    assert asyncio.run(follow()) == []
