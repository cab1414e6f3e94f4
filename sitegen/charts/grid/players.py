"""Who plays: the parts of a block by the names of its rows, each with its instrument."""

from collections.abc import Callable, Sequence

from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.groups import PartGroup, part_name
from sitegen.charts.head import Head, HeadField, UnfitValueError
from sitegen.charts.instruments import family_of, read_instrument
from sitegen.harmony import fingering_interval, spell_note
from sitegen.score.instrument import Instrument
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch

Fingering = Callable[[Pitch], Pitch]
"""Gives a sounding pitch the name that is read or fingered."""


def declared_parts(head: Head, known: Sequence[str]) -> dict[str, HeadField]:
    """Return the head lines that may set up a part, by part name; `known` are the other names."""
    return {
        part_name(entry.name): entry
        for entry in reversed(head.fields)
        if entry.name not in known and entry.name
    }


def instrument_of(
    name: str, groups: Sequence[PartGroup], head: Head, faults: Faults
) -> Instrument | None:
    """Return what a part is played on; None when its head line has a fault.

    `groups` are the part's rows in all systems.
    """
    rows = next((group.strings for group in groups if group.strings), None)
    entry = next((entry for entry in head.fields if part_name(entry.name) == name), None)
    if entry is not None:
        head.find(entry.name)
    # Numbered rows may leave strings out, so they do not tell how many there are.
    numbered = rows is not None and all(row.label.isdecimal() for row in rows)
    count = len(rows) if rows and not numbered else None
    try:
        return read_instrument(name, entry.value if entry else "", count, has_strings=bool(rows))
    except UnfitValueError as wrong:
        span = entry.span_of(wrong.word) if entry else groups[0].span
        faults.add("instrument", span, f"{name}: {wrong}", hint=wrong.hint)
        return None


def fingering_of(instrument: Instrument, key: Key | None) -> Fingering | None:
    """Return what gives a sounding pitch its fingered or read name, None where there is none.

    Without a key there is nothing to choose a spelled interval by: the fingered note is then
    named by itself.
    """
    if instrument.reading is not None:
        return instrument.reading.interval.above
    if instrument.fretted is None:
        return None
    shift = instrument.fretted.shift
    if key is None and shift % 12:
        return lambda pitch: spell_note(pitch.midi - shift)
    return fingering_interval(shift, key).above


def report_unused(
    declared: dict[str, HeadField], playing: Sequence[str], head: Head, faults: Faults
) -> None:
    """Warn of a part that the head sets up and no row plays."""
    for name, entry in declared.items():
        if name not in playing and family_of(name) is not None:
            head.find(entry.name)
            message = f'the head sets up "{name}", but no row plays it'
            hint = f"rows of the block are named {', '.join(playing)}" if playing else ""
            faults.add("part-unused", entry.name_span, message, hint=hint)
