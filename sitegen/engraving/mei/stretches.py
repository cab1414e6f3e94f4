"""Marks over a stretch of a part: palm mute, let ring, swells; and fermatas."""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.element import child
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.staves import text_home
from sitegen.score.chart import Part
from sitegen.score.ids import part_slug

_TEXTS = {"palm mute": "P.M.", "let ring": "let ring"}
_HAIRPINS = {"crescendo": "cres", "diminuendo": "dim"}


def write_stretches(measure: Element, plan: ScorePlan, index: int) -> None:
    """Write the stretches of all parts that start in bar `index` (from 0), and its fermatas."""
    bar = plan.chart.bars[index]
    for part in plan.chart.parts:
        for number, mark in enumerate(part.stretches):
            if bar.start <= mark.onset < bar.end:
                _write_stretch(measure, plan, part, number)
        for voice in plan.voices[part.name]:
            for written in voice.bars[index].opening():
                if "fermata" in written.event.marks:
                    child(measure, "fermata", startid=f"#{written.id}", place="above")


def _write_stretch(measure: Element, plan: ScorePlan, part: Part, number: int) -> None:
    mark = part.stretches[number]
    place = {"tstamp": plan.tstamp(mark.onset), "tstamp2": plan.tstamp2(mark.onset, mark.end)}
    if mark.kind in _HAIRPINS:
        staff = plan.staff_of(part, "staff", "drums", "tab")
        number = staff.number if staff else 1
        child(measure, "hairpin", form=_HAIRPINS[mark.kind], staff=number, place="below", **place)
        return
    staff = plan.staff_of(part, "tab", "staff", "drums")
    if staff is None:
        return
    above = "above" if staff.kind == "tab" else "below"
    text = child(
        measure,
        "dir",
        id=stretch_id(part, number),
        type="stretch",
        staff=staff.number,
        place=above,
        extender="true",
        lform="dashed",
        **place,
    )
    child(text_home(text, staff), "rend", fontstyle="normal").text = _TEXTS[mark.kind]


def stretch_id(part: Part, number: int) -> str:
    """Return the id of the text of a part's stretch `number` (from 0)."""
    return f"{part_slug(part)}-stretch-{number + 1}"
