"""What a save means for the site: the paths that a watcher names, sorted by what they change."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from sitegen.site.content import ARTICLE_FILE, ARTICLES_FOLDER, PAGES_FOLDER, ContentFile
from sitegen.site.content_folder import SETTINGS_FILE


@dataclass(frozen=True)
class Known:
    """The content folder, the theme's and the files that there are, by the folder or the path."""

    content: Path
    theme: Path
    articles: Mapping[str, ContentFile]
    pages: Mapping[str, ContentFile]

    @classmethod
    def of(cls, content: Path, theme: Path, files: Collection[ContentFile]) -> "Known":
        """Return what is known of these files."""
        articles = {file.folder.name: file for file in files if not file.is_page}
        pages = {file.path.name: file for file in files if file.is_page}
        return cls(content, theme, articles, pages)


@dataclass
class Changes:
    """The addresses whose files changed, and what else did; `files` asks to look for files."""

    addresses: set[str] = field(default_factory=set)
    files: bool = False
    settings: bool = False
    theme: bool = False


def sort_changes(paths: Iterable[Path], known: Known) -> Changes:
    """Return what changed with some paths; only the files among them are asked for."""
    changes = Changes()
    for path in paths:
        changes.theme |= path.is_relative_to(known.theme)
        if path.is_relative_to(known.content):
            _sort(path, path.relative_to(known.content).parts, known, changes)
    return changes


def _sort(path: Path, parts: tuple[str, ...], known: Known, changes: Changes) -> None:
    match parts:
        case () | (_,):
            # Of files at the top only the settings matter, and of folders only those two.
            name = parts[0] if parts else ""
            changes.files |= name in {"", ARTICLES_FOLDER, PAGES_FOLDER}
            changes.settings |= name in {"", SETTINGS_FILE}
        case (room, folder, *rest) if room == ARTICLES_FOLDER:
            file = known.articles.get(folder)
            is_text = rest == [ARTICLE_FILE]
            if file is not None:
                changes.addresses.add(file.address)
            # An editor that writes by renaming takes the text away for a moment only.
            there = file is not None and (not is_text or path.exists())
            changes.files |= not there or not rest
        case (room, name) if room == PAGES_FOLDER and name.endswith(".md"):
            page = known.pages.get(name)
            if page is not None:
                changes.addresses.add(page.address)
            changes.files |= page is None or not path.exists()
        case (room, *_) if room == PAGES_FOLDER:
            # Any page may show a file that stands there.
            changes.addresses |= {page.address for page in known.pages.values()}
