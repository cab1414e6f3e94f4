"""The head fields that notation and progressions share."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal, cast

from sitegen.charts.defaults import SongDefaults
from sitegen.charts.head import Head, UnfitValueError, read_id, read_text
from sitegen.diagnostics import did_you_mean
from sitegen.score.chart import Feel
from sitegen.score.clock import read_clock
from sitegen.score.key import MODES, Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo, read_tempo

Label = Literal["degrees", "key degrees", "intervals", "none"]
FEELS = ("straight", "swing", "shuffle")
LABELS = ("degrees", "key degrees", "intervals", "none")
COMMON_TIME = Meter((1, 1, 1, 1), 4)


@dataclass(frozen=True)
class Basics:
    """What a chart's head says of the music as a whole."""

    id: str
    title: str
    key: Key | None
    meter: Meter
    tempo: Tempo | None
    feel: Feel
    start_time: int | None
    first_bar: int
    label: Label
    roman: bool | None


FIELDS = ("id", "title", "key", "meter", "tempo", "feel", "at", "bars", "label", "roman")
"""The names of these fields."""


def read_basics(head: Head, defaults: SongDefaults, *, has_first_bar: bool = True) -> Basics:
    """Return the shared fields of a head; faults are collected in `head`.

    Key, meter and tempo come from the song where the head is silent, the meter then from
    common time. `roman` is None when nothing is said. Without `has_first_bar` the field `bars` is
    left to whoever reads it otherwise.
    """
    meter = head.take("meter", Meter.read, defaults.meter or COMMON_TIME)
    return Basics(
        id=head.take("id", read_id, ""),
        title=head.take("title", read_text, ""),
        key=head.take("key", read_key, defaults.key),
        meter=meter,
        tempo=head.take(
            "tempo", lambda text: read_tempo(text, compound=meter.is_compound), defaults.tempo
        ),
        feel=cast("Feel", head.take("feel", _one_of("feel", FEELS), "straight")),
        start_time=head.take("at", read_clock, None),
        first_bar=head.take("bars", _read_bar, 1) if has_first_bar else 1,
        label=cast("Label", head.take("label", _one_of("label", LABELS), "degrees")),
        roman=head.take("roman", _read_switch, None),
    )


def read_key(text: str) -> Key:
    """Return the key; raises ValueError with a suggestion for a mistyped mode."""
    try:
        key = Key.read(text)
    except ValueError as wrong:
        mode = text.partition(" ")[2].strip()
        if mode and f'"{mode}"' in str(wrong):
            hint = did_you_mean(mode, MODES)
            raise UnfitValueError(str(wrong), word=mode, hint=hint) from None
        raise
    if abs(key.fifths) > 7:  # noqa: PLR2004 - a signature has seven accidentals at most
        raise ValueError(f"{key} has no key signature of its own; respell its tonic")
    return key


def _one_of(what: str, words: tuple[str, ...]) -> Callable[[str], str]:
    def read(text: str) -> str:
        if text.lower() not in words:
            message = f'no {what} is called "{text}"'
            raise UnfitValueError(message, word=text, hint=did_you_mean(text, words))
        return text.lower()

    return read


def _read_bar(text: str) -> int:
    if not re.fullmatch(r"[0-9]{1,4}", text) or int(text) == 0:
        raise ValueError(f'"{text}" is not the number of a bar')
    return int(text)


def _read_switch(text: str) -> bool | None:
    switch = {"on": True, "off": False}
    if text.lower() not in switch:
        raise ValueError(f'"{text}" is neither on nor off')
    return switch[text.lower()]
