"""What a note is to the chord it sounds over."""

from enum import StrEnum


class Role(StrEnum):
    """A note's standing against its chord."""

    CHORD_TONE = "chord tone"
    TENSION = "tension"
    NON_CHORD_TONE = "non-chord tone"
