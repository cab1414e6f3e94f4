"""What a build does on a disk without room: run in a name space of its own, as root.

`python full_disk.py DISK CONTENT ROOM OUT CACHE` lays a small disk over the folder DISK, builds
the site of CONTENT into OUT with what it keeps in CACHE, fills the disk up to ROOM bytes, changes
the write-up, builds again, makes room and builds a third time. It prints what came of it as JSON.
OUT or CACHE lies on the disk.
"""

import hashlib
import json
import os
import subprocess
import sys
from pathlib import Path

SIZE = "24m"


def main(arguments: list[str]) -> int:
    """Do the builds and print what came of them."""
    disk, content, out, cache = (Path(arguments[place]) for place in (0, 1, 3, 4))
    subprocess.run(["/bin/mount", "-t", "tmpfs", "-o", f"size={SIZE}", "tmpfs", disk], check=True)
    first = build(content, out, cache)
    before = manifest(out)
    fill(disk / "fill", int(arguments[2]))
    article = content / "breakdowns" / "low-tide" / "article.md"
    article.write_text(article.read_text(encoding="utf-8").replace("First", "Other"))
    second = build(content, out, cache)
    is_same = manifest(out) == before
    names = sorted(path.name for path in out.parent.iterdir())
    (disk / "fill").unlink()
    third = build(content, out, cache)
    has_changed = manifest(out) != before
    json.dump([first, second, is_same, names, third, has_changed], sys.stdout)
    return 0


def build(content: Path, out: Path, cache: Path) -> tuple[int, str]:
    """Return the status of a build and what it says."""
    done = subprocess.run(
        [sys.executable, "-m", "sitegen", "build", content, "--out", out, "--jobs", "1"],
        env={**os.environ, "XDG_CACHE_HOME": str(cache)},
        capture_output=True,
        text=True,
        check=False,
    )
    return done.returncode, done.stdout + done.stderr


def fill(path: Path, room: int) -> None:
    """Write a file until the disk has only so much room; fails where the disk has no end."""
    free = os.statvfs(path.parent).f_bavail * os.statvfs(path.parent).f_frsize
    with path.open("wb", buffering=0) as file:
        file.write(bytes(free - room))
    left = os.statvfs(path.parent).f_bavail * os.statvfs(path.parent).f_frsize
    if left > room:
        raise RuntimeError(f"the disk still has {left} bytes")


def manifest(folder: Path) -> dict[str, str]:
    """Return the hash of every file below a folder."""
    files = (path for path in folder.rglob("*") if path.is_file())
    return {str(path): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
