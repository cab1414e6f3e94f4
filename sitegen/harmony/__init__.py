"""Harmony: chord symbols, the names of notes and chords, keys, spelling, numerals. Pure.

Every function takes values of `sitegen.score` or their text: `degree("Ab4", "Gbmaj7")`.
"""

from sitegen.harmony.chord_naming import Naming, name_chord
from sitegen.harmony.fingering import fingered_chord, fingered_key, fingering_interval
from sitegen.harmony.key_changes import KeyStretch, find_key_changes
from sitegen.harmony.key_degrees import key_degree
from sitegen.harmony.key_finding import KeyFinding, find_key
from sitegen.harmony.note_names import degree, role
from sitegen.harmony.note_spelling import spell
from sitegen.harmony.numeral_line import ChordFunction, function_line, roman_line
from sitegen.harmony.numerals import roman
from sitegen.harmony.root_motion import root_motion
from sitegen.harmony.spelling import line_goals, spell_note
from sitegen.harmony.symbol import read_chord
from sitegen.harmony.symbol_fault import ChordSymbolError
from sitegen.harmony.two_ways import TwoReadings, find_two_readings

__all__ = [
    "ChordFunction",
    "ChordSymbolError",
    "KeyFinding",
    "KeyStretch",
    "Naming",
    "TwoReadings",
    "degree",
    "find_key",
    "find_key_changes",
    "find_two_readings",
    "fingered_chord",
    "fingered_key",
    "fingering_interval",
    "function_line",
    "key_degree",
    "line_goals",
    "name_chord",
    "read_chord",
    "role",
    "roman",
    "roman_line",
    "root_motion",
    "spell",
    "spell_note",
]
