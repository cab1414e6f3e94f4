"""A kind of chart that ends the process which reads it, as a crash of a library would."""

import os
import signal
from dataclasses import replace

from unit.site.conftest import CLAPS, read_claps

from sitegen.charts.defaults import SongDefaults
from sitegen.kinds.kind import Reading
from sitegen.source import Passage


def read(passage: Passage, defaults: SongDefaults) -> Reading:
    """End this process over a row that says so; `once PATH` spares the second one."""
    words = passage.text.split()
    if words[:1] == ["once"] and not os.path.exists(words[1]):  # noqa: PTH110 - as short as can be
        os.close(os.open(words[1], os.O_CREAT))
        os.kill(os.getpid(), signal.SIGKILL)
    if words[:1] == ["always"]:
        os.kill(os.getpid(), signal.SIGKILL)
    if words[:1] == ["forever"]:
        os.close(os.open(words[1], os.O_WRONLY))  # a pipe whose reader is told that it began
        while True:
            signal.pause()
    return read_claps(passage, defaults)


DEADLY = replace(CLAPS, read=read)
