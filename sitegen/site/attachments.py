"""The pictures of a write-up: files in its own folder, published beside its page."""

from collections.abc import Iterable
from pathlib import Path
from urllib.parse import unquote

from sitegen.article import ImageUse
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.site.content import ContentFile, is_inside
from sitegen.source import Source


def find_images(
    file: ContentFile, source: Source, uses: Iterable[ImageUse]
) -> tuple[dict[str, Path], tuple[Diagnostic, ...]]:
    """Return the pictures that a write-up uses, by their path from its folder, and the faults."""
    found: dict[str, Path] = {}
    faults = []
    for use in uses:
        name = unquote(use.target)
        wrong = _fault(file.folder, source, use, name)
        if wrong is None:
            found[name] = file.folder / name
        else:
            faults.append(wrong)
    return found, tuple(faults)


def _fault(folder: Path, source: Source, use: ImageUse, name: str) -> Diagnostic | None:
    path = path_below(folder, name)
    if path is None:
        message = f'the picture "{name}" lies outside the folder of the write-up'
        hint = "put the picture beside the text and name it by its path from there"
        return fault("image-outside", source, use.span, message, hint=hint)
    if not path.is_file():
        message = f'there is no picture "{name}" beside the text'
        hint = did_you_mean(name, _names(folder))
        return fault("image-missing", source, use.span, message, hint=hint)
    return None


def path_below(folder: Path, name: str) -> Path | None:
    """Return the place in `folder` that `name` leads to, links followed; None if it leads away."""
    if ":" in name.partition("/")[0] or name.startswith("/") or ".." in name.split("/"):
        return None
    path = folder / name
    try:
        path.exists()
        return path if is_inside(path, folder) else None
    except (OSError, ValueError, RuntimeError):
        return None  # a name that no file can have, or links that run in a circle


def _names(folder: Path) -> list[str]:
    files = (path for path in folder.rglob("*") if path.is_file() and path.suffix != ".md")
    return [path.relative_to(folder).as_posix() for path in files]
