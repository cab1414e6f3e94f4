"""What writes the bars of a staff, by the staff's kind."""

from typing import Protocol
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar
from sitegen.engraving.mei.accidentals import Accidentals
from sitegen.engraving.mei.drums import DrumLayer
from sitegen.engraving.mei.element import child
from sitegen.engraving.mei.pitched import PitchedLayer
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.slashes import SlashStaff
from sitegen.engraving.mei.staves import Staff
from sitegen.engraving.mei.tab import TabLayer
from sitegen.score.chart import Part


class StaffWriter(Protocol):
    """Writes the layers of one staff in one bar."""

    def write_bar(self, staff: Element, number: int) -> None:
        """Write bar `number` (from 0) into its `staff` element."""


class LayerWriter(Protocol):
    """Writes one voice of a staff."""

    def write(self, layer: Element, bar: WrittenBar) -> None:
        """Write one bar into its `layer` element."""


class VoicesStaff:
    """A staff that holds the voices of a part, one layer each."""

    def __init__(self, plan: ScorePlan, staff: Staff, part: Part) -> None:
        self._voices = plan.voices[part.name]
        self._accidentals = Accidentals(staff.key)
        self._layers: list[LayerWriter] = [
            self._layer(plan, staff, n) for n in range(len(self._voices))
        ]

    def _layer(self, plan: ScorePlan, staff: Staff, number: int) -> LayerWriter:
        voice = self._voices[number]
        if staff.kind == "drums":
            return DrumLayer(voice)
        if staff.kind == "tab":
            alone = plan.staff_of(voice.part, "staff") is None
            return TabLayer(voice, plan.roles(voice), with_rhythm=alone)
        return PitchedLayer(voice, self._accidentals, plan.roles(voice))

    def write_bar(self, staff: Element, number: int) -> None:
        """Write the bar of every voice."""
        self._accidentals.open_bar()
        bars = [voice.bars[number] for voice in self._voices]
        for n, (writer, bar) in enumerate(zip(self._layers, bars, strict=True), start=1):
            layer = child(staff, "layer", n=n)
            others = [other for other in bars if other is not bar]
            if bar.is_silent and others and (n > 1 or not all(o.is_silent for o in others)):
                child(layer, "mSpace")
            else:
                writer.write(layer, bar)


def staff_writer(plan: ScorePlan, staff: Staff) -> StaffWriter:
    """Return the writer of a staff."""
    if staff.part is None:
        return SlashStaff(plan.chart)
    return VoicesStaff(plan, staff, staff.part)
