"""Which staves a chart has: their order, clefs, strings and labels."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Literal
from xml.etree.ElementTree import Element

from sitegen.engraving.clefs import Clef, clef_of
from sitegen.engraving.mei.accidentals import signature_text
from sitegen.engraving.mei.element import child, put
from sitegen.score.chart import Chart, Part
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch

StaffKind = Literal["staff", "tab", "drums", "slashes"]
_MOST_LABELLED = 10
_TAB_TEXT = "57%"


@dataclass(frozen=True)
class Staff:
    """One staff: its number from the top, whose it is (None for beat slashes), kind and key."""

    number: int
    part: Part | None
    kind: StaffKind
    key: Key | None

    @cached_property
    def clef(self) -> Clef | None:
        """The clef of a part's notation; None for beat slashes."""
        return clef_of(self.part) if self.part else None


def staves_of(chart: Chart, keys: Mapping[str, Key]) -> tuple[Staff, ...]:
    """Return the staves of a chart from the top; a chart of chords alone has beat slashes.

    `keys` are those of the parts that are written in another key than the chart's, by name.
    """
    shown: list[tuple[Part | None, StaffKind]] = [
        (part, kind) for part in chart.parts for kind in _kinds(part)
    ]
    alone: list[tuple[Part | None, StaffKind]] = [(None, "slashes")]
    return tuple(
        Staff(number, part, kind, keys.get(part.name, chart.key) if part else chart.key)
        for number, (part, kind) in enumerate(shown or alone, start=1)
    )


def _kinds(part: Part) -> tuple[StaffKind, ...]:
    if part.is_drums:
        return ("drums",)
    strings = part.instrument.fretted is not None
    kinds: tuple[StaffKind, ...] = tuple(
        kind for kind in ("staff", "tab") if kind in part.shows and (strings or kind != "tab")
    )
    return kinds or ("staff",)


def write_staff_group(parent: Element, chart: Chart, staves: tuple[Staff, ...]) -> None:
    """Write the `staffGrp` of a chart: one staff or joined pair a part, labelled if several."""
    group = child(parent, "staffGrp")
    labelled = len(chart.parts) > 1
    for part in chart.parts or (None,):
        own = [staff for staff in staves if staff.part is part]
        home = group
        if len(own) > 1:
            home = child(group, "staffGrp", symbol="bracket", bar_thru="true")
        if labelled and part is not None and home is not group:
            _label(home, part)
        for staff in own:
            definition = child(home, "staffDef", n=staff.number)
            if labelled and part is not None and home is group:
                _label(definition, part)
            _define_staff(definition, chart, staff, staves)


def text_home(parent: Element, staff: Staff) -> Element:
    """Return where the text of a mark on `staff` is written.

    Verovio scales the text of a tablature with its wider lines; it is brought back to the size
    of all other text.
    """
    return child(parent, "rend", fontsize=_TAB_TEXT) if staff.kind == "tab" else parent


def write_meter_change(parent: Element, staves: tuple[Staff, ...], meter: Meter) -> None:
    """Write the change to `meter` before a bar, on every staff."""
    group = child(child(parent, "scoreDef"), "staffGrp")
    for staff in staves:
        _meter(child(group, "staffDef", n=staff.number), meter, shown=shows_meter(staff, staves))


def shows_meter(staff: Staff, staves: tuple[Staff, ...]) -> bool:
    """Return whether a staff shows the meter: a tablature only where nothing else does."""
    return staff.kind != "tab" or (staff is staves[0] and all(s.kind == "tab" for s in staves))


def _meter(definition: Element, meter: Meter, *, shown: bool) -> None:
    """Write the meter; hidden, it still tells verovio what the beats of a staff's marks are."""
    visible = None if shown else "false"
    child(definition, "meterSig", count=meter.count, unit=meter.unit, visible=visible)


def _label(home: Element, part: Part) -> None:
    label = child(home, "label")
    label.text = part.name[:1].upper() + part.name[1:]
    if len(label.text) > _MOST_LABELLED:
        label.text = label.text[: _MOST_LABELLED - 1] + "."


def _define_staff(
    definition: Element, chart: Chart, staff: Staff, staves: tuple[Staff, ...]
) -> None:
    part = staff.part
    if part is None:
        put(definition, lines=1)
        child(definition, "clef", shape="perc", visible="false")
    elif staff.kind == "tab":
        _define_tab(definition, part)
    elif staff.kind == "drums":
        put(definition, lines=5)
        child(definition, "clef", shape="perc")
    else:
        put(definition, lines=5)
        _clef(definition, staff.clef or clef_of(part))
        child(definition, "keySig", sig=signature_text(staff.key))
    _meter(definition, chart.bars[0].meter, shown=shows_meter(staff, staves))


def _define_tab(definition: Element, part: Part) -> None:
    fretted = part.instrument.fretted
    strings = fretted.tuning.strings[::-1] if fretted else ()
    put(definition, lines=len(strings), notationtype="tab.guitar")
    child(definition, "clef", shape="TAB", line=5)
    tuning = child(definition, "tuning")
    for course, pitch in enumerate(strings, start=1):
        child(tuning, "course", n=course, **_course(pitch))


def _course(pitch: Pitch) -> dict[str, str | int | None]:
    accidental = {-2: "ff", -1: "f", 1: "s", 2: "ss"}.get(pitch.name.alteration)
    return {"pname": pitch.name.letter.lower(), "oct": pitch.octave, "accid": accidental}


def _clef(definition: Element, clef: Clef) -> None:
    below = (8, "below") if clef.octave_lower else (None, None)
    child(definition, "clef", shape=clef.sign, line=clef.line, dis=below[0], dis_place=below[1])
