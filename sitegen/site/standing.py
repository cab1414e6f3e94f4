"""What the last build left, so that a build with nothing to do can say so at once.

None of the rooms that read, draw or set anything is needed here: sizes and times of files are
compared, and a file is read only where its time does not settle the matter.
"""

import os
from collections.abc import Iterable, Iterator
from contextlib import suppress
from pathlib import Path

import msgspec

from sitegen.site.cache import Cache, key_of
from sitegen.site.code_mark import code_times
from sitegen.site.order import Order
from sitegen.site.snapshot import Snapshot, Stamp, is_same, take_snapshot

_VERSION = 1


class Standing(msgspec.Struct, frozen=True, array_like=True):
    """A finished build: what it was asked, what it was made from, and what it said.

    `places` are the files and folders that it read, `inputs` the files found there, `outputs`
    the times of the published folders and pages. `said` are the faults as they were shown and
    `summary` the lines at the end; `failed` says that there were errors.
    """

    version: int
    asked: str
    code: str
    places: list[str]
    inputs: dict[str, Stamp]
    outputs: dict[str, int]
    said: list[str]
    summary: str
    failed: bool


def find_standing(order: Order) -> Standing | None:
    """Return the last build of the same order where a new one would make just the same."""
    standing = _last(order)
    if standing is None or standing.asked != _asked(order) or standing.code != code_times():
        return None
    if standing.outputs != _outputs(order.out, standing.outputs):
        return None
    places = [Path(place) for place in standing.places]
    inputs = take_snapshot(places, standing.inputs)
    return standing if is_same(inputs, standing.inputs) else None


def write_standing(
    order: Order,
    places: Iterable[Path],
    inputs: Snapshot,
    said: Iterable[str],
    summary: str,
    *,
    failed: bool,
) -> None:
    """Keep what a build left; without a cache, or where it cannot be written, nothing is kept."""
    if order.cache is None:
        return
    standing = Standing(
        _VERSION,
        _asked(order),
        code_times(),
        [os.fspath(place) for place in places],
        dict(inputs),
        _outputs(order.out, _made(order.out)),
        list(said),
        summary,
        failed,
    )
    with suppress(UnicodeEncodeError):  # of a path whose bytes are no text
        Cache(order.cache).write(_key(order), msgspec.msgpack.encode(standing))


def known_inputs(order: Order) -> Snapshot:
    """Return the files that the last build of an order was made from, as far as is known."""
    standing = _last(order)
    return {} if standing is None else standing.inputs


def _last(order: Order) -> Standing | None:
    if order.cache is None:
        return None
    try:
        kept = Cache(order.cache).read(_key(order))
        standing = msgspec.msgpack.decode(kept, type=Standing)
    except msgspec.MsgspecError:
        return None
    return standing if standing.version == _VERSION else None


def _key(order: Order) -> str:
    places = os.path.realpath(order.content), os.path.realpath(order.out)
    return key_of("standing", *places)


def _asked(order: Order) -> str:
    # Paths are shown from where the user stands, and a theme is looked for from there.
    return key_of(os.getcwd(), os.fspath(order.out), order.theme, order.drafts, order.strict)


def _made(out: Path) -> Iterator[str]:
    """Yield the folders and pages of a published folder, by their path from there."""
    for folder, _, names in os.walk(out):
        yield os.path.relpath(folder, out)
        for name in names:
            if name.endswith(".html"):
                yield os.path.relpath(os.path.join(folder, name), out)


def _outputs(out: Path, names: Iterable[str]) -> dict[str, int]:
    """Return the times of what a build made; 0 for what is gone."""
    return {name: _time(os.path.join(out, name)) for name in names}


def _time(path: str) -> int:
    try:
        return os.stat(path).st_mtime_ns
    except OSError:
        return 0
