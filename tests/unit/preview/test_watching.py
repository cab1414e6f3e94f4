"""Saves are told also where the system watches no folder."""

import asyncio
from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from sitegen.preview import watching
from sitegen.preview.watching import saves


async def _first(folder: Path) -> set[Path]:
    told = saves(lambda: [folder])
    waiting = asyncio.ensure_future(anext(told))
    await asyncio.sleep(0.2)
    (folder / "deep" / "article.md").write_text("Other words.", encoding="utf-8")
    async with asyncio.timeout(30):
        return set(await waiting)


def test_where_nothing_can_be_watched_the_files_are_looked_at(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async def refuse(*_: Path, **__: object) -> AsyncIterator[set[tuple[int, str]]]:
        raise PermissionError
        yield set()

    (tmp_path / "deep").mkdir()
    (tmp_path / "deep" / "article.md").write_text("Words.", encoding="utf-8")
    monkeypatch.setattr(watching, "awatch", refuse)
    monkeypatch.setattr(watching, "_LOOK", 50)

    assert tmp_path / "deep" / "article.md" in asyncio.run(_first(tmp_path))
