"""Whose the music of a chart is: what a file that leaves the page has to say of it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Credits:
    """The song that a chart is taken from; texts are "" and tuples empty where nothing is known.

    `holder` is who the song belongs to.
    """

    song: str = ""
    artist: str = ""
    writers: tuple[str, ...] = ()
    holder: str = ""

    @property
    def rights(self) -> str:
        """A sentence about whose the song is, "" where nobody says."""
        return f"The song belongs to {self.holder}." if self.holder else ""
