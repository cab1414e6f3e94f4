"""What was made once and may be needed again: files, each under the hash of its making.

A cache only ever saves time: it may be deleted at any moment, an entry that cannot be read counts
as missing, and one that cannot be written is left out. Entries are written under another name,
then renamed, and carry a checksum, so that neither a killed process nor two builds at once can
leave half a value.
"""

import hashlib
import io
import os
import pickle
from contextlib import suppress
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

from sitegen.site.file_reading import read_own
from sitegen.site.refusal import reason_of

MOST_BYTES = 1 << 30
"""How much a cache may hold: a write-up with seven charts takes about 80 KB."""

_LEVEL = 1
_ROOM = 1 << 16
"""Bytes for which a cache of any use has room."""
_PLAIN = {
    ("builtins", "frozenset"): frozenset,
    ("builtins", "set"): set,
    ("datetime", "date"): date,
    ("fractions", "Fraction"): Fraction,
    (type(Path()).__module__, type(Path()).__name__): type(Path()),
}
_TAG = (
    "Signature: 8a477f597d28d172789f06886806bc55\n"
    "# Made by sitegen, which makes it again where it is missing: https://bford.info/cachedir/\n"
)


def default_cache_folder() -> Path:
    """Return the folder for what this user's builds keep, by the custom of the system."""
    from platformdirs import user_cache_path  # noqa: PLC0415 - only the command line asks

    return user_cache_path("sitegen", appauthor=False)


def key_of(*parts: object) -> str:
    """Return the hash of some values, which must tell all that they are in their `repr`."""
    whole = hashlib.blake2b(digest_size=20)
    for part in parts:
        whole.update(repr(part).encode("utf-8", "surrogatepass") + b"\0")
    return whole.hexdigest()


class Cache:
    """The values kept in `folder`, which is made when the first one is put there."""

    def __init__(self, folder: Path, most_bytes: int = MOST_BYTES) -> None:
        self._folder = folder / "made"
        self._most_bytes = most_bytes

    def get(self, key: str) -> Any:  # noqa: ANN401 - whoever put it there knows what it is
        """Return the value under `key`, None where there is none that can be read."""
        import zstandard  # noqa: PLC0415 - a build with nothing to do needs none of it

        try:
            data = zstandard.ZstdDecompressor().decompress(self.read(key))
            return _Reader(io.BytesIO(data)).load()
        except Exception:  # noqa: BLE001 - whatever is wrong with an entry, it is made anew
            return None

    def put(self, key: str, value: object) -> None:
        """Keep a value made of the project's own classes and of plain ones under `key`."""
        import zstandard  # noqa: PLC0415 - as above

        packed = zstandard.ZstdCompressor(_LEVEL, write_checksum=True)
        self.write(key, packed.compress(pickle.dumps(value, pickle.HIGHEST_PROTOCOL)))

    def read(self, key: str) -> bytes:
        """Return the bytes under `key`, none where there are none; they count as used now."""
        path = self._path(key)
        try:
            data = read_own(path)
            os.utime(path)
        except OSError:
            return b""
        return data

    def write(self, key: str, data: bytes) -> None:
        """Keep some bytes under `key`, whole or not at all; they carry no checksum of ours."""
        path = self._path(key)
        fresh = path.with_name(f".{path.name}.{os.getpid()}")
        try:
            self._write(path, fresh, data)
        except OSError:
            with suppress(OSError):
                fresh.unlink()

    def find_trouble(self) -> str:
        """Return why nothing can be kept, "" where something can."""
        path = self._path(key_of("trouble"))
        fresh = path.with_name(f".{path.name}.{os.getpid()}")
        try:
            self._write(path, fresh, bytes(_ROOM))
            path.unlink()
        except OSError as wrong:
            with suppress(OSError):
                fresh.unlink()
            return reason_of(wrong)
        return ""

    def prune(self) -> None:
        """Drop the entries not used for the longest time, until the rest may stay."""
        entries = []
        for folder, _, names in os.walk(self._folder):
            for path in (Path(folder, name) for name in names):
                with suppress(OSError):  # another build dropped it
                    found = path.stat()
                    entries.append((found.st_mtime_ns, found.st_size, path))
        held = sum(size for _, size, _ in entries)
        for _, size, path in sorted(entries):
            if held <= self._most_bytes:
                break
            with suppress(OSError):
                path.unlink()
            held -= size

    def _path(self, key: str) -> Path:
        return self._folder / key[:2] / key[2:]

    def _write(self, path: Path, fresh: Path, data: bytes) -> None:
        self._make(path.parent)
        fresh.unlink(missing_ok=True)
        with fresh.open("xb") as file:  # whatever stands there by now, it is not ours
            file.write(data)
        fresh.replace(path)

    def _make(self, folder: Path) -> None:
        folder.mkdir(parents=True, exist_ok=True)
        tag = self._folder.parent / "CACHEDIR.TAG"
        if not tag.exists():
            tag.write_text(_TAG, encoding="ascii")


class _Reader(pickle.Unpickler):
    """Makes nothing but values of our own classes: a file that somebody planted runs nothing."""

    def find_class(self, module: str, name: str) -> Any:  # noqa: ANN401 - as in the base class
        if (module, name) in _PLAIN:
            return _PLAIN[module, name]
        found = super().find_class(module, name) if module.startswith("sitegen.") else None
        if isinstance(found, type) and found.__module__ == module:
            return found
        raise pickle.UnpicklingError(f"{module}.{name} is no value")
