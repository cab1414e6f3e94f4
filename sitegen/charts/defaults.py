"""What a chart takes over from its article where its own head is silent."""

from dataclasses import dataclass, field

from sitegen.charts.beside import Beside
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo


@dataclass(frozen=True)
class SongDefaults:
    """The song's key, meter and tempo by the article's front matter; None where it is silent.

    A tuning is never taken over: a part without a tuning of its own is in standard tuning, so
    that a chart can be read without looking anywhere else. `beside` gives files of the write-up's
    folder, None where there is no folder; it says nothing of the song and counts in no comparison.
    """

    key: Key | None = None
    meter: Meter | None = None
    tempo: Tempo | None = None
    beside: Beside | None = field(default=None, compare=False, repr=False)
