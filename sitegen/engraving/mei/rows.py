"""The rows of text above and below the staves: sections, remarks, chords, degrees, numerals."""

from xml.etree.ElementTree import Element

from sitegen.analysis.melody import is_melodic
from sitegen.engraving.copyist import WrittenEvent
from sitegen.engraving.labels import label_of
from sitegen.engraving.mei.element import child
from sitegen.engraving.mei.plan import ROLE_CLASSES, ScorePlan
from sitegen.engraving.mei.staves import Staff, text_home
from sitegen.engraving.mei.symbols import write_chord_symbol, write_degree, write_numeral
from sitegen.engraving.mei.tempo import write_tempo
from sitegen.score.chart import Bar, Part

# Each row of `harm` elements has a name of its own: verovio keeps what shares one on a straight
# line and, whatever its staff, spreads the music so that it does not overlap.
_CHORDS, _DEGREES, _NUMERALS = "chords", "degrees", "numerals"


def write_rows(measure: Element, plan: ScorePlan, index: int) -> None:
    """Write the rows of bar `index` (from 0), from the top of the page to its foot."""
    bar = plan.chart.bars[index]
    _write_sections(measure, plan, index)
    if index == 0:
        write_tempo(measure, plan.chart)
    _write_remarks(measure, plan, index)
    _write_chords(measure, plan, bar)
    for part in plan.chart.parts:
        if plan.chart.label != "none" and is_melodic(part):
            _write_degrees(measure, plan, part, index)
    if plan.chart.roman:
        _write_numerals(measure, plan, bar)


def _write_sections(measure: Element, plan: ScorePlan, index: int) -> None:
    for section in plan.chart.sections:
        if plan.bar_index(section.onset) == index:
            mark = child(measure, "reh", staff=1, tstamp=plan.tstamp(section.onset))
            child(text_home(mark, plan.staves[0]), "rend", rend="box").text = section.text


def _write_remarks(measure: Element, plan: ScorePlan, index: int) -> None:
    for remark in plan.chart.remarks:
        if plan.bar_index(remark.onset) == index:
            tstamp = plan.tstamp(remark.onset)
            mark = child(measure, "dir", staff=1, place="above", tstamp=tstamp)
            text_home(mark, plan.staves[0]).text = remark.text


def _write_chords(measure: Element, plan: ScorePlan, bar: Bar) -> None:
    for event in plan.chart.chords:
        if bar.start <= event.onset < bar.end:
            tstamp = plan.tstamp(event.onset)
            harm = child(measure, "harm", staff=1, n=_CHORDS, place="above", tstamp=tstamp)
            name = plan.chord_name(event.chord)
            write_chord_symbol(text_home(harm, plan.staves[0]), name)


def _write_degrees(measure: Element, plan: ScorePlan, part: Part, index: int) -> None:
    staff = plan.staff_of(part)
    if staff is None:
        return
    for voice in plan.voices[part.name]:
        for written in voice.bars[index].opening():
            _write_degree(measure, plan, written, staff)


def _write_degree(measure: Element, plan: ScorePlan, written: WrittenEvent, staff: Staff) -> None:
    label = label_of(plan, written)
    if label is None:
        return
    harm = child(
        measure,
        "harm",
        type=f"degree {ROLE_CLASSES[label.role]}" if label.role else "degree",
        staff=staff.number,
        n=f"{_DEGREES}-{staff.number}",
        place="below",
        **_label_place(plan, written, staff),
    )
    write_degree(text_home(harm, staff), label.text, label.role)


def _label_place(plan: ScorePlan, written: WrittenEvent, staff: Staff) -> dict[str, str]:
    """Return what a label is attached to: its note, but in a tablature alone the beat.

    Verovio sets what is attached to the notes of a tablature too far to the right.
    """
    if staff.kind == "tab":
        return {"tstamp": plan.tstamp(written.event.onset)}
    return {"startid": f"#{written.id}"}


def _write_numerals(measure: Element, plan: ScorePlan, bar: Bar) -> None:
    lowest = plan.staves[-1]
    for chord in plan.reading.chords:
        if bar.start <= chord.onset < bar.end and chord.roman:
            harm = child(
                measure,
                "harm",
                type="numeral",
                staff=lowest.number,
                n=_NUMERALS,
                place="below",
                tstamp=plan.tstamp(chord.onset),
            )
            write_numeral(text_home(harm, lowest), chord.roman)
