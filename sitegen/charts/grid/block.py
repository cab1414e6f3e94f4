"""A `notation` block taken apart: its head, its time and its rows, before any note is read."""

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.charts.basics import FIELDS, Basics, read_basics
from sitegen.charts.defaults import SongDefaults
from sitegen.charts.grid.cells import check_bar_lines
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.groups import Groups, PartGroup, group_rows
from sitegen.charts.grid.players import declared_parts
from sitegen.charts.grid.rows import Row, cut_systems
from sitegen.charts.grid.timeline import SystemTime, Timeline, read_timeline
from sitegen.charts.head import Head, HeadField, split_head
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
    timeline = read_timeline(systems, basics.meter, basics.first_bar, faults)
    groups = tuple(group_rows(time.rows, declared, faults) for time in timeline.systems)
    for time in timeline.systems:
        for line in time.rows.lines:
            if isinstance(line, Row) and line is not time.count:
                check_bar_lines(line, time, faults)
    return Block(passage, head, basics, show, declared, timeline, groups, faults)


def _read_show(text: str) -> tuple[str, ...]:
    ways = tuple(dict.fromkeys(word.strip() for word in text.split(",") if word.strip()))
    for way in ways:
        if way not in SHOWS:
            raise ValueError(f'"{way}" is not one of {", ".join(SHOWS)}')
    return ways
