"""Where a theme stands: in the wheel, beside a checkout, or in a folder that the user names."""

from pathlib import Path

import sitegen
from sitegen.diagnostics import did_you_mean
from sitegen.site.refusal import RefusedError

_PACKAGE = Path(sitegen.__file__).parent
_HOMES = (_PACKAGE / "themes", _PACKAGE.parent / "themes")
_SIGN = "pages/article.html"


def find_theme(name: str, folder: Path) -> Path | None:
    """Return the folder of the theme called `name`, or at the path `name` seen from `folder`.

    None when there is no such theme.
    """
    homes = [home / name for home in _HOMES] if _is_name(name) else []
    candidates = [*homes, folder / name]
    return next((path for path in candidates if (path / _SIGN).is_file()), None)


def asked_theme(name: str) -> Path:
    """Return the folder of the theme that a user names, who stands in the current folder.

    Raises RefusedError when there is no such theme.
    """
    folder = find_theme(name, Path.cwd())
    if folder is None:
        hint = did_you_mean(name, theme_names())
        raise RefusedError(f'no theme is called "{name}"' + (f"; {hint}" if hint else ""))
    return folder


def theme_names() -> tuple[str, ...]:
    """Return the names of the themes that come with sitegen."""
    themes = (path.parent.parent for home in _HOMES for path in home.glob(f"*/{_SIGN}"))
    return tuple(sorted({theme.name for theme in themes}))


def _is_name(name: str) -> bool:
    return Path(name).name == name and name not in {"", ".", ".."}
