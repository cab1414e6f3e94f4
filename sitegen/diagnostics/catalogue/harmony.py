"""Codes for faults in chord symbols."""

from sitegen.diagnostics.catalogue.code import Code


def _changes(symbol: str) -> str:
    return f"```changes\nid: a\nkey: C\n\n| C | {symbol} | F | G |\n```\n"


HARMONY_CODES: tuple[Code, ...] = (
    Code(
        "chord-root",
        "error",
        "A chord symbol does not start with a root, a capital letter from A to G.",
        _changes("am7"),
        _changes("Am7"),
    ),
    Code(
        "chord-quality",
        "error",
        "What follows the root of a chord symbol is no kind of chord.",
        _changes("Amajj7"),
        _changes("Amaj7"),
    ),
    Code(
        "chord-alteration",
        "error",
        "A degree that is altered, added, suspended or left out is none that the chord can have.",
        _changes("G7(b9,#12)"),
        _changes("G7(b9,#11)"),
    ),
    Code(
        "chord-bass",
        "error",
        "What follows the slash of a chord symbol is no bass note.",
        _changes("Am7/H"),
        _changes("Am7/G"),
    ),
    Code(
        "chord-bracket",
        "error",
        "A bracket in a chord symbol opens and never closes, or closes without being open.",
        _changes("G7(b9"),
        _changes("G7(b9)"),
    ),
    Code(
        "chord-two-ways",
        "error",
        "A chord symbol means one thing to one writer and another to the next.",
        _changes("Bbb5"),
        _changes("Bb(b5)"),
    ),
    Code(
        "chord-read-as",
        "note",
        "A chord symbol is read in the usual way, though some writers mean another chord by it.",
        _changes("C2"),
        _changes("Cadd2"),
    ),
)
