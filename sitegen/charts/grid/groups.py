"""Which rows of a system belong together: each part with the rows that speak of it."""

import re
from collections.abc import Collection
from dataclasses import dataclass, field

from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.rows import Heading, Row, System
from sitegen.charts.instruments import family_of
from sitegen.diagnostics import did_you_mean
from sitegen.score.drums import KIT
from sitegen.source import Span

SYSTEM_ROWS = ("count", "chord", "section", "say")
PART_ROWS = ("words", "degree", "mark")
_STRING_LABEL = re.compile(r"(?i:[A-G])(?:b|#|♭|♯)?[0-9]?|[1-9]")
_MISTYPED_LABEL = re.compile(r"[^\W_]{1,2}")


@dataclass
class PartGroup:
    """One part in one system: its pitched row, or its string or drum rows, and rows below."""

    name: str
    span: Span
    pitched: Row | None = None
    strings: list[Row] = field(default_factory=list)
    drums: list[Row] = field(default_factory=list)
    words: list[Row] = field(default_factory=list)
    degree: list[Row] = field(default_factory=list)
    mark: list[Row] = field(default_factory=list)
    has_lost_rows: bool = False


@dataclass
class Groups:
    """A system's rows by what they speak of."""

    parts: list[PartGroup] = field(default_factory=list)
    chord: list[Row] = field(default_factory=list)
    section: list[Row] = field(default_factory=list)
    say: list[Row] = field(default_factory=list)


def group_rows(system: System, declared: Collection[str], faults: Faults) -> Groups:
    """Return the rows of a system grouped; `declared` are the part names of the head.

    A row whose label is no row name, no part and no string or drum of the part above is
    reported and left out.
    """
    groups = Groups()
    group: PartGroup | None = None
    waiting: list[Row] = []
    for line in system.lines:
        if isinstance(line, Heading):
            group = _open_group(line, declared, groups, faults)
        elif line.label.lower() in SYSTEM_ROWS:
            _add_system_row(line, groups, faults)
        elif line.label.lower() == "mark" and group is None:
            waiting.append(line)
        elif line.label.lower() in PART_ROWS:
            _add_part_row(line, group, faults)
        elif group and _belongs(line, group, declared):
            _add_own_row(line, group, faults)
        else:
            group = _pitched_group(line, declared, groups, faults) or group
    # Marks are also written above the tablature: above the first part they are that part's.
    for row in waiting:
        _add_part_row(row, groups.parts[0] if groups.parts else None, faults)
    for part in groups.parts:
        if not (part.pitched or part.strings or part.drums or part.has_lost_rows):
            hint = "write its rows under it, or its pitches behind its name and a bar line"
            faults.add("part-empty", part.span, f'no rows stand under "{part.name}"', hint=hint)
    return groups


def part_name(label: str) -> str:
    """Return the name of a part as it is compared: small letters, single spaces."""
    return " ".join(label.lower().split())


def is_part(label: str, declared: Collection[str]) -> bool:
    """Tell whether a label names a part: by a usual name, or because the head declares it."""
    return part_name(label) in declared or family_of(part_name(label)) is not None


def _is_drums(name: str) -> bool:
    return family_of(name) == "drums"


def _belongs(row: Row, group: PartGroup, declared: Collection[str]) -> bool:
    """Tell whether a row is a string or a drum of the part above, or a mistyped label of one."""
    if group.pitched is not None:
        return False
    if _is_drums(group.name) and row.label.upper() in KIT:
        return True
    if not _is_drums(group.name) and _STRING_LABEL.fullmatch(row.label):
        return True
    return bool(_MISTYPED_LABEL.fullmatch(row.label)) and not is_part(row.label, declared)


def _add_own_row(row: Row, group: PartGroup, faults: Faults) -> None:
    if not _is_drums(group.name):
        group.strings.append(row)
        return
    label = row.label.upper()
    if label not in KIT:
        group.has_lost_rows = True
        hint = did_you_mean(label, KIT) or f"labels are {' '.join(KIT)}"
        faults.add("row-unknown", row.label_span, f'no drum is called "{row.label}"', hint=hint)
    elif any(other.label.upper() == label for other in group.drums):
        message = f"a second row for the {KIT[label].name} stands in the same system"
        hint = "write both in one row, or name the drums apart: T1, T2"
        faults.add("row-double", row.label_span, message, hint=hint)
    else:
        group.drums.append(row)


def _open_group(
    heading: Heading, declared: Collection[str], groups: Groups, faults: Faults
) -> PartGroup | None:
    if not is_part(heading.name, declared):
        names = (*SYSTEM_ROWS, *PART_ROWS, *declared, "guitar", "bass", "drums")
        hint = did_you_mean(heading.name, names) if heading.name else ""
        message = f'"{heading.name}" is neither a row (it has no bar line) nor the name of a part'
        faults.add("row-unknown", heading.span, message, hint=hint)
        return None
    group = PartGroup(part_name(heading.name), heading.span)
    return _add_group(group, groups, faults)


def _add_group(group: PartGroup, groups: Groups, faults: Faults) -> PartGroup:
    first = next((part for part in groups.parts if part.name == group.name), None)
    if first is not None:
        faults.add(
            "part-double",
            group.span,
            f'the part "{group.name}" stands twice in one system',
            hint=f'call the second one "{group.name} 2"',
            related=((first.span, "first here"),),
        )
    else:
        groups.parts.append(group)
    return group


def _add_system_row(row: Row, groups: Groups, faults: Faults) -> None:
    name = row.label.lower()
    if name == "count":
        return
    rows: list[Row] = getattr(groups, name)
    if rows and name == "chord":
        faults.add("row-double", row.label_span, "a second chord row stands in the same system")
        return
    rows.append(row)


def _add_part_row(row: Row, group: PartGroup | None, faults: Faults) -> None:
    name = row.label.lower()
    if group is None:
        faults.add(
            "row-alone",
            row.label_span,
            f'the "{name}" row stands under no part',
            hint="write it below the part that it speaks of",
        )
        return
    rows: list[Row] = getattr(group, name)
    if rows and name == "degree":
        faults.add("row-double", row.label_span, "a second degree row stands under the same part")
        return
    rows.append(row)


def _pitched_group(
    row: Row, declared: Collection[str], groups: Groups, faults: Faults
) -> PartGroup | None:
    if not is_part(row.label, declared):
        message = f'no row is called "{row.label}"' if row.label else "a row has no name"
        names = (*SYSTEM_ROWS, *PART_ROWS, *declared, "voice", "lead", "keys", "bass", "guitar")
        hint = did_you_mean(row.label, names) if row.label else ""
        if not hint:
            hint = f'a part of that name needs a line in the head: "{row.label}: at pitch"'
        faults.add("row-unknown", row.label_span, message, hint=hint)
        return None
    group = PartGroup(part_name(row.label), row.label_span, pitched=row)
    return _add_group(group, groups, faults)
