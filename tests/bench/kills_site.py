"""A small site whose content stands in one of two states, and what a build of each publishes."""

import hashlib
import os
import shutil
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

ROOT = Path(__file__).parents[2]
STATES = ("first", "second")
"""The names of the two states."""

Manifest = Mapping[str, str]
"""The hash of every file of a published folder, by its path from there."""

_ARTICLE = """\
---
title: {title}
summary: Made to be built and interrupted.
status: published
published: 2026-03-0{day}
---

{words} {{see riff}}

```notation
id: riff
title: A riff
key: E minor
meter: 4/4
tempo: 96
bass: standard

count | 1   2   3   4   | 1   2   3   4   |
chord | Em              | {chord:<16}|
bass  | E1  G1  A1  B1  | {bass:<16}|
```
"""
_SAME = {"title": "Kept as it is", "day": 1, "words": "Nothing changes.", "chord": "C"}
_BEFORE = {"title": "Played again", "day": 2, "words": "It goes down.", "chord": "Am"}
_AFTER = {"title": "Played again", "day": 2, "words": "It goes up.", "chord": "G"}
_GONE = {"title": "Taken away", "day": 3, "words": "Only in one state.", "chord": "D"}
_NEW = {"title": "Come to it", "day": 4, "words": "Only in the other.", "chord": "Bm"}
_BASS = {"C": "C2  B1", "Am": "A1  G1", "G": "G1  A1", "D": "D2  A1", "Bm": "B1  F#1"}
_WRITE_UPS = {
    "first": {"kept": _SAME, "again": _BEFORE, "gone": _GONE},
    "second": {"kept": _SAME, "again": _AFTER, "new": _NEW},
}


class Site:
    """A site in `folder`: its content, what is published of it and the cache of its builds."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.content = folder / "content"
        self.out = folder / "site" / "published"
        self.cache = folder / "cache"
        self.out.parent.mkdir(parents=True)

    def write(self, state: str) -> None:
        """Put the content into one of its states."""
        shutil.rmtree(self.content, ignore_errors=True)
        for slug, words in _WRITE_UPS[state].items():
            path = self.content / "breakdowns" / slug / "article.md"
            path.parent.mkdir(parents=True)
            text = _ARTICLE.format(**words, bass=_BASS[str(words["chord"])])
            path.write_text(text, encoding="utf-8")
        (self.content / "site.toml").write_text('title = "Cut Short"\n', encoding="utf-8")

    def command(self, *options: str, jobs: int = 2) -> list[str]:
        """Return the command that builds the site."""
        build = ["-m", "sitegen", "build", str(self.content), "--out", str(self.out)]
        return [sys.executable, *build, "--jobs", str(jobs), *options]

    @property
    def environment(self) -> dict[str, str]:
        """The environment that a build of the site runs in."""
        cache = {"XDG_CACHE_HOME": str(self.cache), "PYTHONPATH": str(ROOT)}
        return {**os.environ, **cache}

    def build(self, *options: str) -> "subprocess.CompletedProcess[str]":
        """Build the site and return how that ended."""
        return subprocess.run(
            self.command(*options),
            env=self.environment,
            capture_output=True,
            text=True,
            check=False,
            timeout=300,
        )

    def manifest(self) -> Manifest:
        """Return what is published."""
        return manifest_of(self.out)

    def beside(self) -> list[str]:
        """Return what a build left beside the published folder."""
        return sorted(path.name for path in self.out.parent.iterdir() if path != self.out)


def manifest_of(folder: Path) -> Manifest:
    """Return the hash of every file under a folder, by its path from there."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file()
    }


def clean_manifests(site: Site) -> dict[str, Manifest]:
    """Return what a first build of each state publishes; raises RuntimeError where it fails."""
    manifests = {}
    for state in STATES:
        shutil.rmtree(site.out, ignore_errors=True)
        site.write(state)
        built = site.build("--no-cache")
        if built.returncode or not site.out.is_dir():
            raise RuntimeError(built.stdout + built.stderr)
        manifests[state] = site.manifest()
    if manifests["first"] == manifests["second"]:
        raise RuntimeError("the two states publish the same")
    return manifests
