"""Where the content folder is: the nearest one that holds the settings of a site."""

from pathlib import Path

SETTINGS_FILE = "site.toml"


def find_content(start: Path) -> Path | None:
    """Return the nearest folder at or above `start` that holds a site.toml, None without one."""
    start = start.absolute()
    candidates = (start, *start.parents)
    return next((folder for folder in candidates if (folder / SETTINGS_FILE).is_file()), None)


def default_content(folder: Path) -> Path | None:
    """Return the content folder of somebody who works in `folder`, None when there is none."""
    for candidate in (folder / "content", folder):
        if (candidate / SETTINGS_FILE).is_file():
            return candidate
    return find_content(folder)
