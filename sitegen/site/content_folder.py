"""Where the content folder is: the nearest one that holds the settings of a site.

What stands under the name of the settings and is no file still makes a content folder: whoever
reads it tells what is wrong with it.
"""

import os
from pathlib import Path

from sitegen.site.refusal import RefusedError, reason_of

SETTINGS_FILE = "site.toml"


def find_content(start: Path) -> Path | None:
    """Return the nearest folder at or above `start` that holds a site.toml, None without one."""
    start = start.absolute()
    candidates = (start, *start.parents)
    return next((folder for folder in candidates if _has_settings(folder)), None)


def default_content(folder: Path) -> Path | None:
    """Return the content folder of somebody who works in `folder`, None when there is none."""
    for candidate in (folder / "content", folder):
        if _has_settings(candidate):
            return candidate
    return find_content(folder)


def check_readable(folder: Path) -> None:
    """Raise RefusedError where the system does not let us look into a folder."""
    try:
        (folder / SETTINGS_FILE).lstat()
        with os.scandir(folder):
            return
    except (FileNotFoundError, NotADirectoryError):
        return
    except OSError as wrong:
        raise RefusedError(f"{folder} cannot be read: {reason_of(wrong)}") from wrong


def _has_settings(folder: Path) -> bool:
    return os.path.lexists(folder / SETTINGS_FILE)
