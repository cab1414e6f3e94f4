"""The files that a kind's example needs, at hand without a folder."""

from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.charts.beside import BesideError
from sitegen.charts.defaults import SongDefaults
from sitegen.kinds import ChartKind


@dataclass(frozen=True)
class FilesBeside:
    """Gives files out of a table."""

    files: Mapping[str, bytes]

    def read(self, name: str, most: int) -> bytes:
        """Return a file of the table."""
        if name not in self.files or len(self.files[name]) > most:
            raise BesideError(f'there is no file "{name}" beside the text')
        return self.files[name]


def defaults_of(kind: ChartKind) -> SongDefaults:
    """Return no song's defaults, with the files of the kind's example."""
    files = {name: text.encode() for name, text in kind.example_files.items()}
    return SongDefaults(beside=FilesBeside(files))
