"""The full-text index of a site, made by pagefind from what its pages say.

It is made anew whenever a word has changed; its files differ from one making to the next.
"""

import errno
import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterable
from pathlib import Path

from sitegen.pages.words_feed import feed_of
from sitegen.site.addresses import INDEX
from sitegen.site.cache import Cache, key_of
from sitegen.site.pressing import Press
from sitegen.site.writing import carry_over, refusal

WORDS = "words"
"""The folder of the index, from the top of the site."""
LONGEST = 600
"""Seconds that the index may take; thousands of write-ups take half a minute."""

_ROOM = 1 << 20
"""Bytes on the disk with less than which an index fails for want of room."""

# Letters that belong to words here: E♭, F♯m7, 7/8, C#.
_LETTERS = "♭♯/#°ø"
_NOT_NEEDED = (
    "pagefind-ui.*",
    "pagefind-modular-ui.*",
    "pagefind-component-ui.*",
    "*highlight.js",
)


class WordsError(Exception):
    """The index could not be made; the text says why."""


def index_words(press: Press, addresses: Iterable[str], before: str) -> str:
    """Make the index of the pages at `addresses`, and return the hash of their words.

    The pages stand below `press.top`. Where the hash is `before`, that of the published index,
    that index stays. Raises WordsError where pagefind fails, and RefusedError where the system
    does not let us write.
    """
    try:
        return _index(press, addresses, before)
    except OSError as wrong:
        raise refusal(Path(wrong.filename or press.top / WORDS), wrong) from wrong


def _index(press: Press, addresses: Iterable[str], before: str) -> str:
    top, old = press.top, press.old
    with tempfile.TemporaryDirectory(prefix="sitegen-words-") as place:
        mark = _write_feed(press, Path(place), addresses)
        if mark and (mark != before or not (old / WORDS / "pagefind.js").is_file()):
            _run(Path(place), top / WORDS)
        elif mark:
            shutil.copytree(old / WORDS, top / WORDS, copy_function=carry_over)
    return mark


def _write_feed(press: Press, place: Path, addresses: Iterable[str]) -> str:
    """Write what the index reads, and return its hash; "" where there is nothing to read."""
    whole = hashlib.blake2b(digest_size=12)
    count = 0
    for address in sorted(addresses):
        feed = _feed(press, address)
        if feed:
            whole.update(f"{address}\0{len(feed)}\0".encode() + feed)
            (place / address).mkdir(parents=True)
            (place / address / INDEX).write_bytes(feed)
            count += 1
    return whole.hexdigest() if count else ""


def _feed(press: Press, address: str) -> bytes:
    """Return what the index reads of a page; it is kept for as long as the page stays."""
    page = press.top / address / INDEX
    if press.cache is None:
        return feed_of(page.read_bytes())
    cache, info = Cache(press.cache), page.stat()
    key = key_of("words", press.mark, address, info.st_size, info.st_mtime_ns)
    kept = cache.get(key)
    if isinstance(kept, bytes):
        return kept
    feed = feed_of(page.read_bytes())
    if feed:
        cache.put(key, feed)
    return feed


def _run(feed: Path, out: Path) -> None:
    options = ["--site", feed, "--output-path", out, "--include-characters", _LETTERS, "--quiet"]
    command = [sys.executable, "-m", "pagefind", *map(str, options)]
    try:
        done = subprocess.run(  # noqa: S603 - a program of ours with paths of ours
            command, capture_output=True, text=True, timeout=LONGEST, check=False
        )
    except (OSError, subprocess.TimeoutExpired) as wrong:
        raise WordsError(f"the index of words could not be made: {wrong}") from wrong
    if done.returncode or not (out / "pagefind.js").is_file():
        if shutil.disk_usage(out.parent).free < _ROOM:  # it has words of its own for that
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), os.fspath(out))
        said = (done.stderr or done.stdout).strip() or f"pagefind ended with {done.returncode}"
        raise WordsError(f"the index of words could not be made: {said}")
    for pattern in _NOT_NEEDED:
        for path in out.glob(pattern):
            path.unlink()
