"""The chord symbols over the top staff."""

from xml.etree.ElementTree import Element

from sitegen.engraving.musicxml.chord_kinds import chord_kind
from sitegen.engraving.musicxml.element import child
from sitegen.harmony.canonical import degrees_of
from sitegen.score.chord import Chord, NoChord
from sitegen.score.interval import Interval
from sitegen.score.pitch import PitchName


def make_harmony(chord: Chord | NoChord, written: Interval) -> Element:
    """Return a chord's `harmony`; `written` is the interval from what sounds to what is read.

    The symbol is told twice: for programs that play it as a kind with degrees, for the eye as
    the text it has on the page, so that the degrees are not printed again.
    """
    harmony = Element("harmony", {"placement": "above"})
    if isinstance(chord, NoChord):
        child(child(harmony, "root"), "root-step", "C", text="")
        child(harmony, "kind", "none", text=str(chord))
        return harmony
    _write_name(harmony, "root", written.above_name(chord.root))
    found = chord_kind(degrees_of(chord))
    child(harmony, "kind", found.kind, text=chord.quality)
    if chord.bass != chord.root:
        _write_name(harmony, "bass", written.above_name(chord.bass))
    for change in found.changes:
        degree = child(harmony, "degree", print_object="no")
        child(degree, "degree-value", change.number)
        child(degree, "degree-alter", change.alteration)
        child(degree, "degree-type", change.action)
    return harmony


def _write_name(harmony: Element, place: str, name: PitchName) -> None:
    home = child(harmony, place)
    child(home, f"{place}-step", name.letter)
    if name.alteration:
        child(home, f"{place}-alter", name.alteration)
