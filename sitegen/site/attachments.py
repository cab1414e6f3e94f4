"""The files of a write-up: in its own folder, published beside its page.

Whatever is published is a file of the site: a kind is let through when a browser shows or plays
it and runs nothing of it.
"""

import unicodedata
from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass
from functools import cache, partial
from pathlib import Path, PurePosixPath
from urllib.parse import unquote

from sitegen.article import ImageUse
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.site.active_content import find_active
from sitegen.site.content import ContentFile
from sitegen.site.file_names import find_name_fault
from sitegen.site.file_reading import holds_file, open_file
from sitegen.source import Source, Span

PICTURES = frozenset({".apng", ".avif", ".gif", ".jpeg", ".jpg", ".png", ".svg", ".webp"})
SOUNDS = frozenset({".aac", ".flac", ".m4a", ".mp3", ".oga", ".ogg", ".opus", ".wav", ".weba"})
"""Names of files that hold sound without a picture (MDN, common media types; from memory)."""
FILMS = frozenset({".m4v", ".mov", ".mp4", ".ogv", ".webm"})
SCORES = frozenset({".mei", ".mid", ".midi", ".musicxml", ".mxl", ".xml"})
PAPERS = frozenset({".csv", ".epub", ".json", ".pdf", ".srt", ".txt", ".vtt", ".zip"})
ALL_KINDS = PICTURES | SOUNDS | FILMS | SCORES | PAPERS
"""Kinds of files that a browser shows, plays or keeps, and does not run."""

_XML = frozenset({".mei", ".musicxml", ".svg", ".xml"})
_MEGA = 1_000_000
_LARGEST = {
    frozenset({".svg"}): 2 * _MEGA,
    _XML: 20 * _MEGA,
    PICTURES: 50 * _MEGA,
    SOUNDS | FILMS: 2000 * _MEGA,
    ALL_KINDS: 100 * _MEGA,
}
"""Bytes up to which a file is published; the first row that has its kind counts."""
_MOST_NAMES = 1000


@dataclass(frozen=True)
class Attachment:
    """A file that a text uses: its path from the folder, and the place that names it."""

    name: str
    source: Source
    span: Span

    def fault(self, code: str, message: str, hint: str = "") -> Diagnostic:
        """Return a fault of the file, told at the place that names it."""
        return fault(code, self.source, self.span, message, hint=hint)


def find_images(
    file: ContentFile, source: Source, uses: Iterable[ImageUse]
) -> tuple[dict[str, Path], tuple[Diagnostic, ...]]:
    """Return the pictures that a write-up uses, by their path from its folder, and the faults."""
    found: dict[str, Path] = {}
    faults: list[Diagnostic] = []
    names = cache(partial(_names, file.folder))  # looked up once, and only for a missing picture
    for use in uses:
        picture = Attachment(unquote(use.target), source, use.span)
        path = path_below(file.folder, picture.name)
        wrong = _missing(path, picture, names) or unfit(path, picture, PICTURES)
        if wrong is not None:
            faults.append(wrong)
        elif path is not None:
            found[picture.name] = path
    return found, tuple(faults)


def unfit(path: Path | None, file: Attachment, kinds: Collection[str]) -> Diagnostic | None:
    """Return why a file must not be published, None for one that may be."""
    suffix = PurePosixPath(file.name).suffix.lower()
    if path is None or suffix not in kinds:
        message = f'"{file.name}" is not a kind of file that can be published here'
        return file.fault("file-kind", message, f"kinds that can be: {_listed(kinds)}")
    reason = find_name_fault(file.name)
    if reason:
        return file.fault("file-name-unusable", f'the name "{file.name}" {reason}')
    return _content_fault(path, file, suffix)


def path_below(folder: Path, name: str) -> Path | None:
    """Return the place in `folder` that `name` leads to, links followed; None if it leads away."""
    if ":" in name.partition("/")[0] or name.startswith("/") or ".." in name.split("/"):
        return None
    try:
        path = (folder / name).resolve()
        path.exists()
        return path if path.is_relative_to(folder.resolve()) else None
    except (OSError, ValueError, RuntimeError):
        return None  # a name that no file can have, or links that run in a circle


def _missing(
    path: Path | None, picture: Attachment, names: Callable[[], list[str]]
) -> Diagnostic | None:
    if path is None:
        message = f'the picture "{picture.name}" lies outside the folder of the write-up'
        hint = "put the picture beside the text and name it by its path from there"
        return picture.fault("image-outside", message, hint)
    if not holds_file(path):
        message = f'there is no picture "{picture.name}" beside the text'
        return picture.fault("image-missing", message, did_you_mean(picture.name, names()))
    return None


def _content_fault(path: Path, file: Attachment, suffix: str) -> Diagnostic | None:
    most = next(most for kinds, most in _LARGEST.items() if suffix in kinds)
    try:
        with open_file(path) as stream:
            size = path.stat().st_size
            data = stream.read(most + 1) if suffix in _XML else b""
    except OSError as wrong:
        reason = wrong.strerror or str(wrong)
        return file.fault("file-unreadable", f'"{file.name}" cannot be read: {reason.lower()}')
    if size > most or len(data) > most:
        message = f'"{file.name}" has more than {most // _MEGA} MB'
        return file.fault(
            "file-unreadable", message, "make it smaller, or link to where it is kept"
        )
    active = find_active(data, is_picture=suffix == ".svg") if suffix in _XML else ""
    if not active:
        return None
    message = f'"{file.name}" is not a file that does no more than show itself: {active}'
    hint = "save it again as a plain picture or score, without scripts and without links"
    return file.fault("file-active", message, hint)


def _listed(kinds: Collection[str]) -> str:
    return ", ".join(sorted(kind.removeprefix(".") for kind in kinds))


def _names(folder: Path) -> list[str]:
    """Return the names of the files of a write-up, none where there are very many."""
    names: list[str] = []
    for path in folder.rglob("*"):
        if path.suffix != ".md" and holds_file(path):
            names.append(unicodedata.normalize("NFC", path.relative_to(folder).as_posix()))
        if len(names) > _MOST_NAMES:
            return []
    return names
