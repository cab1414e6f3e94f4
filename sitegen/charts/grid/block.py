"""A `notation` block taken apart: its head, its time and its rows, before any note is read."""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.charts.basics import FIELDS, Basics, read_basics
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.grid.cells import check_bar_lines, own_bar_lines
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.groups import Groups, PartGroup, group_rows
from sitegen.charts.grid.players import declared_parts
from sitegen.charts.grid.rows import Row, cut_systems
from sitegen.charts.grid.timeline import Opening, SystemTime, Timeline, read_timeline
from sitegen.charts.head import Head, HeadField, UnfitValueError, split_head
from sitegen.diagnostics import did_you_mean
from sitegen.source import Passage

SHOWS = ("staff", "tab", "drums", "grid", "contour")
HEAD_NAMES = (*FIELDS, "show")


@dataclass(frozen=True)
class Block:
    """What a block consists of; `show` are the ways of drawing its author asks for."""

    passage: Passage
    head: Head
    basics: Basics
    show: tuple[str, ...]
    declared: dict[str, HeadField]
    timeline: Timeline
    groups: tuple[Groups, ...]
    faults: Faults

    @property
    def systems(self) -> Iterator[tuple[Groups, SystemTime]]:
        """Each system's rows with its time."""
        return zip(self.groups, self.timeline.systems, strict=True)

    @property
    def part_names(self) -> tuple[str, ...]:
        """The names of all parts in the order in which they first appear."""
        return tuple(dict.fromkeys(part.name for group in self.groups for part in group.parts))

    def rows_of(self, name: str) -> list[tuple[PartGroup, SystemTime]]:
        """Return the rows of one part in each system that has some."""
        return [
            (part, time)
            for group, time in self.systems
            for part in group.parts
            if part.name == name
        ]


def take_apart(passage: Passage, defaults: SongDefaults) -> Block:
    """Return the parts of a block; faults are collected in its head and its `faults`."""
    head = split_head(passage)
    faults = Faults(passage.source)
    basics = read_basics(head, defaults)
    nothing: tuple[str, ...] = ()
    show = head.take("show", _read_show, nothing)
    declared = declared_parts(head, HEAD_NAMES)
    systems = cut_systems(head.body, faults)
    if not systems:
        faults.add("notation-empty", passage.opening, "the block has no rows")
    known_meter = None if head.has_fault_in("meter") else basics.meter
    timeline = read_timeline(systems, Opening(known_meter, basics.first_bar), faults)
    groups = tuple(group_rows(time.rows, declared, faults) for time in timeline.systems)
    for time in timeline.systems:
        for line in time.rows.lines:
            if isinstance(line, Row) and line is not time.count and not _is_free(line, time):
                check_bar_lines(line, time, faults)
    return Block(passage, head, basics, show, declared, timeline, groups, faults)


def _is_free(row: Row, time: SystemTime) -> bool:
    """Tell whether a row's bar lines may stand anywhere: words are dealt out, not aligned."""
    return row.label.lower() == "words" and own_bar_lines(row, len(time.bars)) is not None


def _read_show(text: str) -> tuple[str, ...]:
    words = [word.strip() for word in text.split(",") if word.strip()]
    for word in words:
        if word.lower() not in SHOWS:
            message = f'no way of drawing is called "{word}"'
            raise UnfitValueError(message, word=word, hint=did_you_mean(word, SHOWS))
    return tuple(dict.fromkeys(word.lower() for word in words))
