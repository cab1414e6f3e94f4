"""Where a theme stands: in the wheel, beside a checkout, or in a folder that the user names."""

import os
from collections.abc import Iterator
from pathlib import Path

import sitegen
from sitegen.diagnostics import did_you_mean
from sitegen.site.file_reading import holds_file, read_own
from sitegen.site.refusal import RefusedError, reason_of

_PACKAGE = Path(sitegen.__file__).parent
_HOMES = (_PACKAGE / "themes", _PACKAGE.parent / "themes")
_SIGN = "pages/article.html"
_ROOMS = ("pages", "pieces", "styles", "scripts", "fonts")
_TEXTS = frozenset({".css", ".html", ".js", ".svg"})


def find_theme(name: str, folder: Path) -> Path | None:
    """Return the folder of the theme called `name`, or at the path `name` seen from `folder`.

    None when there is no such theme.
    """
    homes = [home / name for home in _HOMES] if _is_name(name) else []
    candidates = [*homes, folder / name]
    return next((path for path in candidates if holds_file(path / _SIGN)), None)


def asked_theme(name: str) -> Path:
    """Return the folder of the theme that a user names, who stands in the current folder.

    Raises RefusedError when there is no such theme.
    """
    folder = find_theme(name, Path.cwd())
    if folder is None:
        hint = did_you_mean(name, theme_names())
        raise RefusedError(f'no theme is called "{name}"' + (f"; {hint}" if hint else ""))
    return folder


def check_theme(folder: Path) -> None:
    """Raise RefusedError for the first file of a theme that cannot be read or is no text.

    Such a file would fail where a page needs it, or be waited for without end.
    """
    for path in _files_of(folder):
        try:
            data = read_own(path)
            if path.suffix in _TEXTS:
                data.decode()
        except OSError as wrong:
            raise RefusedError(f"{path} cannot be read: {reason_of(wrong)}") from wrong
        except UnicodeDecodeError as wrong:
            raise RefusedError(f"{path} cannot be read: it is not UTF-8") from wrong


def _files_of(folder: Path) -> Iterator[Path]:
    """Yield the files of a theme that may be read for a page."""

    def refuse(wrong: OSError) -> None:
        if not isinstance(wrong, FileNotFoundError):  # a theme need not have every room
            raise RefusedError(f"{wrong.filename} cannot be read: {reason_of(wrong)}") from wrong

    for room in _ROOMS:
        for place, _, names in os.walk(folder / room, onerror=refuse):
            yield from (Path(place, name) for name in names)


def theme_names() -> tuple[str, ...]:
    """Return the names of the themes that come with sitegen."""
    themes = (path.parent.parent for home in _HOMES for path in home.glob(f"*/{_SIGN}"))
    return tuple(sorted({theme.name for theme in themes}))


def _is_name(name: str) -> bool:
    return Path(name).name == name and name not in {"", ".", ".."}
