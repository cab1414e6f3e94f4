"""The content folder: which write-ups and pages it holds and at which address each will stand."""

import errno
import os
import re
import stat
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from pathlib import Path

from sitegen.diagnostics import Diagnostic, fault
from sitegen.site.content_folder import SETTINGS_FILE
from sitegen.site.file_names import find_name_fault
from sitegen.site.file_reading import read_text_file
from sitegen.site.refusal import reason_of
from sitegen.source import Source, Span

ARTICLE_FILE = "article.md"
ARTICLES_FOLDER = "breakdowns"
PAGES_FOLDER = "pages"
RESERVED = frozenset(
    "404 archive corrections find fonts index people pictures scripts shelf styles words".split()
) | {ARTICLES_FOLDER}
"""Names that the site itself uses at its top."""

SLUG = re.compile(r"\w+(-\w+)*")


@dataclass(frozen=True)
class ContentFile:
    """A Markdown file that becomes a page: a write-up, or a free page where `is_page`.

    `slug` is the last part of its address. `root` is the content folder that it must lie in, None
    for a file that is looked at by itself.
    """

    slug: str
    path: Path
    is_page: bool = False
    root: Path | None = field(default=None, compare=False, repr=False)

    @property
    def address(self) -> str:
        """The folder of its page, from the top of the site."""
        return f"{self.slug}/" if self.is_page else f"{ARTICLES_FOLDER}/{self.slug}/"

    @property
    def folder(self) -> Path:
        """The folder whose files it may use."""
        return self.path.parent

    def read(self) -> bytes:
        """Return what the file holds; raises OSError where it is no file that may be read."""
        return read_text_file(self.path, self.root)


@dataclass(frozen=True)
class Content:
    """What was found in a content folder; each tuple is ordered by slug."""

    folder: Path
    articles: tuple[ContentFile, ...]
    pages: tuple[ContentFile, ...]
    diagnostics: tuple[Diagnostic, ...]

    @property
    def is_known(self) -> bool:
        """False where a folder could not be read: nobody knows what it holds."""
        return all(found.code != "content-unreadable" for found in self.diagnostics)

    @property
    def settings_path(self) -> Path:
        """The file with the site's settings."""
        return self.folder / SETTINGS_FILE


def scan_content(folder: Path) -> Content:
    """Return the write-ups and pages in `folder`; what cannot be one is a fault."""
    faults: list[Diagnostic] = []
    articles = _keep(_articles(folder / ARTICLES_FOLDER, faults), folder, faults)
    pages = _keep(_pages(folder / PAGES_FOLDER, faults), folder, faults)
    free = [page for page in pages if not _is_reserved(page, faults)]
    return Content(folder, tuple(articles), tuple(free), tuple(faults))


def is_inside(path: Path, folder: Path) -> bool:
    """Return whether `path`, every link followed, lies in `folder`."""
    return Path(os.path.realpath(path)).is_relative_to(os.path.realpath(folder))


def shown(path: Path) -> str:
    """Return the name of `path` as people see it: relative to where they work if it lies there."""
    path = path.absolute()
    here = Path.cwd()
    return path.relative_to(here).as_posix() if path.is_relative_to(here) else path.as_posix()


def whole_file_fault(code: str, path: Path, message: str, hint: str = "") -> Diagnostic:
    """Return a fault of a file or folder as such, not of a place in its text."""
    return fault(code, Source(shown(path), ""), Span(1, 1, 1, 1), message, hint=hint)


def _articles(folder: Path, faults: list[Diagnostic]) -> list[ContentFile]:
    found = []
    for entry in _entries(folder, faults):
        if not _may_be_folder(entry):
            hint = f"a write-up stands in a folder of its own: {entry.stem}/{ARTICLE_FILE}"
            message = f'"{entry.name}" is not part of any write-up'
            faults.append(whole_file_fault("content-stray", entry, message, hint))
        elif _is_missing(entry / ARTICLE_FILE):
            message = f'the folder "{entry.name}" holds no {ARTICLE_FILE}'
            faults.append(whole_file_fault("content-stray", entry, message))
        else:
            found.append(ContentFile(_nfc(entry.name), entry / ARTICLE_FILE))
    return found


def _pages(folder: Path, faults: list[Diagnostic]) -> list[ContentFile]:
    """Return the Markdown files of `folder`; other files there serve the pages."""
    entries = _entries(folder, faults)
    return [
        ContentFile(_nfc(entry.stem), entry, is_page=True)
        for entry in entries
        if entry.suffix == ".md"
    ]


def _entries(folder: Path, faults: list[Diagnostic]) -> list[Path]:
    try:
        entries = [entry for entry in folder.iterdir() if not entry.name.startswith(".")]
    except FileNotFoundError:
        return []
    except OSError as wrong:
        faults.append(unreadable(folder, wrong))
        return []
    return sorted(entries, key=lambda entry: entry.name)


def _may_be_folder(path: Path) -> bool:
    """Return whether a folder stands at a path; what we may not look at counts as one."""
    try:
        return stat.S_ISDIR(path.stat().st_mode)
    except OSError as wrong:
        return wrong.errno not in _NOTHING_THERE


def _is_missing(path: Path) -> bool:
    """Return whether nothing stands at a path; what we may not look at counts as something."""
    try:
        path.stat()
    except OSError as wrong:
        return wrong.errno in _NOTHING_THERE
    return False


_NOTHING_THERE = {errno.ENOENT, errno.ELOOP}  # a link may lead to nothing, or to itself


def unreadable(path: Path, wrong: OSError) -> Diagnostic:
    """Return the fault for a file or folder that the system does not let us read."""
    message = f'"{path.name}" cannot be read: {reason_of(wrong)}'
    return whole_file_fault("content-unreadable", path, message)


def _keep(
    found: Iterable[ContentFile], folder: Path, faults: list[Diagnostic]
) -> list[ContentFile]:
    """Return the files that have an address of their own and lie in the content folder."""
    kept: dict[str, ContentFile] = {}
    for file in found:
        wrong = _address_fault(file, kept.get(file.slug.casefold()))
        if wrong is None and not is_inside(file.path, folder):
            message = f'"{file.slug}" is a link to a place outside the content folder'
            wrong = whole_file_fault("content-link", file.path, message)
        if wrong is None:
            kept[file.slug.casefold()] = replace(file, root=folder)
        else:
            faults.append(wrong)
    return sorted(kept.values(), key=lambda file: file.slug)


def _address_fault(file: ContentFile, same: ContentFile | None) -> Diagnostic | None:
    if not SLUG.fullmatch(file.slug):
        message = f'"{file.slug}" cannot be part of an address'
        hint = "use letters, digits and single hyphens, such as low-tide"
        return whole_file_fault("address-unusable", file.path, message, hint)
    reason = find_name_fault(file.slug)
    if reason:
        return whole_file_fault("address-unusable", file.path, f'"{file.slug}" {reason}')
    if same is not None:
        message = f'"{file.slug}" has the same address as {shown(same.path)}'
        hint = "addresses must differ in more than capitals or the way an accent is stored"
        return whole_file_fault("address-double", file.path, message, hint)
    return None


def _is_reserved(page: ContentFile, faults: list[Diagnostic]) -> bool:
    if page.slug.casefold() not in RESERVED:
        return False
    message = f'the site itself uses the address "{page.slug}"'
    hint = f"others it uses: {', '.join(sorted(RESERVED - {page.slug.casefold()}))}"
    faults.append(whole_file_fault("address-reserved", page.path, message, hint))
    return True


def _nfc(name: str) -> str:
    return unicodedata.normalize("NFC", name)
