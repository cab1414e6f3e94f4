"""What is attached to the measures: rows of text, techniques, marks over a stretch."""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.rows import write_rows
from sitegen.engraving.mei.stretches import write_stretches
from sitegen.engraving.mei.techniques import write_techniques
from sitegen.engraving.mei.ties import write_ties


def write_controls(measure: Element, plan: ScorePlan, index: int) -> None:
    """Write everything that starts in bar `index` (from 0) and stands outside the layers."""
    write_rows(measure, plan, index)
    write_ties(measure, plan, index)
    write_techniques(measure, plan, index)
    write_stretches(measure, plan, index)
