"""The files of a write-up's own folder, for charts that are made of one."""

import unicodedata
from dataclasses import dataclass
from pathlib import Path

from sitegen.charts.beside import BesideError
from sitegen.diagnostics import did_you_mean
from sitegen.site.attachments import path_below
from sitegen.site.file_reading import open_file


@dataclass(frozen=True)
class FolderBeside:
    """The files in `folder`."""

    folder: Path

    def read(self, name: str, most: int) -> bytes:
        """Return what the file `name` holds.

        Raises BesideError where it lies elsewhere, is no file, or has more than `most` bytes.
        """
        path = path_below(self.folder, name)
        if path is None:
            hint = "put it beside the text and name it by its path from there"
            raise BesideError(f'"{name}" lies outside the folder of the write-up', hint)
        try:
            with open_file(path) as stream:
                data = stream.read(most + 1)
        except FileNotFoundError:
            hint = did_you_mean(name, self._names())
            raise BesideError(f'there is no file "{name}" beside the text', hint) from None
        except (OSError, ValueError) as wrong:
            reason = getattr(wrong, "strerror", None) or str(wrong)
            raise BesideError(f'"{name}" cannot be read: {reason.lower()}') from wrong
        if len(data) > most:
            raise BesideError(f'"{name}" has more than {most // 1_000_000} MB')
        return data

    def _names(self) -> list[str]:
        try:
            found = [path.name for path in self.folder.iterdir()]
        except OSError:
            return []
        return [unicodedata.normalize("NFC", name) for name in found if not name.endswith(".md")]
