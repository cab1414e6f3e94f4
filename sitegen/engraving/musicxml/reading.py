"""How a part is read: its clef, its strings, and how far what is read lies from what sounds.

A file for notation programs holds what a player reads, with a `transpose` that leads to what
sounds: guitar and bass an octave higher under a plain clef, which is how programs know them, and
transposing instruments in their key. A tablature alone is read at sounding pitch.
"""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.accidentals import signature_fifths
from sitegen.engraving.mei.staves import Staff
from sitegen.engraving.musicxml.element import child
from sitegen.score.instrument import Fretted
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.pitch import Pitch

_UNISON, _OCTAVE = Interval(0, 0), Interval(7, 12)
_STEPS, _SEMITONES = 7, 12
_TAB_LINE = 5


def written_interval(staff: Staff) -> Interval:
    """Return the interval from what sounds up to what a staff shows."""
    part = staff.part
    if part is None or staff.kind != "staff":
        return _UNISON
    if part.instrument.reading is not None:
        return part.instrument.reading.interval
    return _OCTAVE if staff.clef and staff.clef.octave_lower else _UNISON


def written_key(key: Key | None, written: Interval) -> Key | None:
    """Return the key that a part reads in."""
    return None if key is None else Key(written.above_name(key.tonic), key.mode)


def write_key(attributes: Element, staff: Staff, key: Key | None) -> None:
    """Write the key signature; tablature and drums have none."""
    if staff.kind in ("staff", "slashes"):
        home = child(attributes, "key")
        child(home, "fifths", signature_fifths(key))
        if key is not None:
            child(home, "mode", key.mode)


def write_meter(attributes: Element, meter: Meter) -> None:
    """Write the meter; where its groups are not those that everybody expects they are told."""
    plain = meter.is_compound or set(meter.groups) == {1} or len(meter.groups) == 1
    time = child(attributes, "time")
    child(time, "beats", meter.count if plain else "+".join(map(str, meter.groups)))
    child(time, "beat-type", meter.unit)


def write_staff(attributes: Element, staff: Staff) -> None:
    """Write clef, strings, capo and transposition of a staff."""
    _write_clef(attributes, staff)
    part = staff.part
    if part is not None and part.instrument.fretted is not None:
        _write_strings(attributes, part.instrument.fretted, is_tab=staff.kind == "tab")
    _write_transposition(attributes, written_interval(staff))


def _write_clef(attributes: Element, staff: Staff) -> None:
    clef = child(attributes, "clef")
    if staff.kind == "drums":
        child(clef, "sign", "percussion")
    elif staff.kind == "tab":
        child(clef, "sign", "TAB")
        child(clef, "line", _TAB_LINE)
    else:
        child(clef, "sign", staff.clef.sign if staff.clef else "G")
        child(clef, "line", staff.clef.line if staff.clef else 2)


def _write_strings(attributes: Element, fretted: Fretted, *, is_tab: bool) -> None:
    """Write the strings of a tablature and any capo.

    On a staff of notes the strings would make it a tablature to some programs; there they are
    told in words.
    """
    details = Element("staff-details")
    if is_tab:
        child(details, "staff-lines", len(fretted.tuning))
        for line, pitch in enumerate(fretted.tuning.strings, start=1):
            _write_string(details, pitch, line)
    if fretted.capo:
        child(details, "capo", fretted.capo)
    if len(details):
        attributes.append(details)


def _write_string(details: Element, pitch: Pitch, line: int) -> None:
    tuning = child(details, "staff-tuning", line=line)
    child(tuning, "tuning-step", pitch.name.letter)
    if pitch.name.alteration:
        child(tuning, "tuning-alter", pitch.name.alteration)
    child(tuning, "tuning-octave", pitch.octave)


def strings_text(fretted: Fretted) -> str:
    """Return how strings differ from the plain case: "Tuning D A D G B E, capo 2", else ""."""
    names = " ".join(str(pitch.name) for pitch in fretted.tuning.strings)
    tuning = f"Tuning {names}" if fretted.tuning != fretted.standard else ""
    capo = f"capo {fretted.capo}" if fretted.capo else ""
    text = ", ".join(filter(None, (tuning, capo)))
    return text[:1].upper() + text[1:]


def _write_transposition(attributes: Element, written: Interval) -> None:
    """Write the way from what is read to what sounds, whole octaves for themselves."""
    if written == _UNISON:
        return
    octaves = abs(written.steps) // _STEPS * (-1 if written.steps > 0 else 1)
    transpose = child(attributes, "transpose")
    child(transpose, "diatonic", -written.steps - _STEPS * octaves)
    child(transpose, "chromatic", -written.semitones - _SEMITONES * octaves)
    if octaves:
        child(transpose, "octave-change", octaves)
