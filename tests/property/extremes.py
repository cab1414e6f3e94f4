"""Articles that go to extremes: numbers off any map, depth, length and repetition without end."""

FRONT = "---\ntitle: An example\nsummary: Made for a test.\nstatus: draft\n{}---\n\n"
_BARS = "| C | F | G | C "
_GRID = "count | 1   2   3   4   |\n"


def _article(body: str, front: str = "") -> str:
    return FRONT.format(front) + body


def _notation(head: str, rows: str = "voice | C4  D4  E4  F4  |") -> str:
    head = head if "meter:" in head else f"meter: 4/4\n{head}"
    return _article(f"```notation\nid: a\nkey: C\n{head}\n\n{_GRID}{rows}\n```\n")


def _changes(body: str, head: str = "") -> str:
    return _article(f"```changes\nid: a\nkey: C\nmeter: 4/4\n{head}\n{body}\n```\n")


def _form(rows: str, head: str = "") -> str:
    return _article(f"```form\nid: a\ntempo: 96\nmeter: 4/4\n{head}\n{rows}\n```\n")


def _tuned(tuning: str, fret: str = "0") -> str:
    return _notation(f"guitar: {tuning}", f"guitar\n  1   | {fret}---2---3---0-|")


REFUSED: dict[str, str] = {
    "a string below hearing": _tuned("C-99 C-98 C0 C1"),
    "a string above hearing": _tuned("E2 A2 D3 G3 B3 E99"),
    "forty strings": _tuned(" ".join(["E2"] * 40)),
    "a capo at a thousand million": _tuned("standard, capo 1000000000"),
    "a string flattened fourteen times": _tuned("E2 A2 D3 G3 B3 Ebbbbbbbbbbbbbb4"),
    "a fret at a thousand million": _tuned("standard", "1000000000"),
    "a fret in other digits": _tuned("standard", "١٢"),
    "a note below MIDI 0": _notation("tempo: 96", "voice | C-2 D4  E4  F4  |"),
    "a note above MIDI 127": _notation("tempo: 96", "voice | B#9 D4  E4  F4  |"),
    "an octave of twenty digits": _notation("", f"voice | C{'9' * 20} |"),
    "tempo 0": _notation("tempo: 0"),
    "tempo 1e9": _notation("tempo: 1e9"),
    "tempo NaN": _notation("tempo: NaN"),
    "tempo inf": _notation("tempo: inf"),
    "tempo -5": _notation("tempo: -5"),
    "tempo of 5000 digits": _notation(f"tempo: {'9' * 5000}"),
    "meter 0/4": _notation("meter: 0/4"),
    "meter 1/1000": _notation("meter: 1/1000"),
    "meter 1000000/4": _notation("meter: 1000000/4"),
    "meter 4/0": _notation("meter: 4/0"),
    "meter of 5000 digits": _notation(f"meter: 4/{'9' * 5000}"),
    "meter of 2000 groups": _notation(f"meter: {'3+' * 2000}2/8"),
    "ten thousand bars in a line": _changes(_BARS * 2500 + "|"),
    "ten thousand bars in lines": _changes(f"{_BARS}|\n" * 2500),
    "repeats in repeats": _changes("|: C " * 9000 + ":|" * 9000),
    "a key of a hundred thousand sharps": _changes("| C |", f"key: C{'#' * 100_000}\n"),
    "a chord of half the file": _changes(f"| {'C' * 200_000} |"),
    "a row of half the file": _notation("", f"voice | {'C4 ' * 80_000}|"),
    "a thousand rows of words": _notation(
        "", "voice | C4  D4  E4  F4  |\n" + "words | a |\n" * 1000
    ),
    "ten thousand sections": _form("".join(f"Verse {n} | 4\n" for n in range(10_000))),
    "a section of 10^400 bars": _form(f"Verse | 1{'0' * 400}"),
    "a length of three thousand years": _form("Verse | 4", "length: 99999999999:59\n"),
    "quotes in lists ten thousand deep": _article("> - " * 10_000 + "x\n"),
    "lists in lists by lines": _article("".join(f"{'  ' * n}- x\n" for n in range(400))),
    "emphasis ten thousand deep": _article("*" * 10_000 + "x" + "*" * 10_000 + "\n"),
    "ten megabytes in one line": _article("x " * 5_000_000),
    "a hundred thousand footnotes": _article("".join(f"[^{n}]: b\n\n" for n in range(100_000))),
    "five thousand links to nothing": _article("[a](b)\n\n" * 5000),
    "a long address linked by name": _article(
        f"[a]: /{'x' * 9000}\n\n" + ("[a] " * 50 + "\n\n") * 200
    ),
    "more charts than a page bears": _article("```changes\nkey: C\n\n| C |\n```\n\n" * 1001),
    "aliases that grow": _article(
        "", "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n"
    ),
    "fields in fields": _article("", "".join(f"{' ' * n}a:\n" for n in range(200))),
    "five thousand fields": _article("", "".join(f"x{n}: 1\n" for n in range(5000))),
    "half of a surrogate pair": _article("It ends \ud800 here.\n"),
    "NUL": _article("It ends \0 here.\n"),
}
"""What must be told."""

READ: dict[str, str] = {
    "three thousand footnotes": _article(
        "".join(f"a[^{n}]\n\n[^{n}]: b\n\n" for n in range(3000))
    ),
    "five thousand links": _article("## x\n\n" + "[a](#x)\n\n" * 5000),
    "five thousand headings": _article("## a\n\n" * 5000),
    "a table of five thousand rows": _article("a|b\n-|-\n" + "x|y\n" * 5000),
    "many charts": _article("```changes\nkey: C\nmeter: 4/4\ntempo: 96\n\n| C |\n```\n\n" * 300),
    "a byte order mark": "\ufeff" + _article("Words.\n"),
    "foreign line ends": _article("Words.\n\nMore.\n").replace("\n", "\r\n"),
    "letters of other directions": _article("ערב טוב 7/8 مساء الخير e\u0301\u0323.\n"),
}
"""What can be read, however much of it there is."""
