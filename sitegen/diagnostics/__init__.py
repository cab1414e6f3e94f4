"""Faults in what an author wrote: as values, as a catalogue, as text and as JSON."""

from sitegen.diagnostics.catalogue import CATALOGUE, Code
from sitegen.diagnostics.diagnostic import Diagnostic, Severity, fault, ordered
from sitegen.diagnostics.explanation import explain_code
from sitegen.diagnostics.frame import draw_frame
from sitegen.diagnostics.printable import printable, printable_json
from sitegen.diagnostics.record import as_record
from sitegen.diagnostics.suggestion import did_you_mean

__all__ = [
    "CATALOGUE",
    "Code",
    "Diagnostic",
    "Severity",
    "as_record",
    "did_you_mean",
    "draw_frame",
    "explain_code",
    "fault",
    "ordered",
    "printable",
    "printable_json",
]
