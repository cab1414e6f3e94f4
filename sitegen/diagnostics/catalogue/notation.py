"""Codes for faults in the rows of notation and in progressions."""

from sitegen.diagnostics.catalogue.code import Code

# More bars than any chart has; each of them is counted properly.
_TOO_MANY_BARS = "```changes\nid: a\n\n" + "| C " * 1001 + "|\n```\n"

NOTATION_CODES: tuple[Code, ...] = (
    Code(
        "head-field",
        "error",
        "A line of a chart's head has a name that no head line has.",
        (
            "```notation\n"
            "id: a\n"
            "tmepo: 96\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "tempo: 96\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
    ),
    Code(
        "head-value",
        "error",
        "The value of a head line cannot be read.",
        (
            "```notation\n"
            "id: a\n"
            "key: H minor\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "key: B minor\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
    ),
    Code(
        "head-double",
        "error",
        "A head line stands twice.",
        (
            "```notation\n"
            "id: a\n"
            "tempo: 96\n"
            "tempo: 98\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "tempo: 96\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
    ),
    Code(
        "notation-empty",
        "error",
        "A notation block has no rows.",
        ("```notation\nid: a\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "grid-tab",
        "error",
        "A tab character stands in the rows, where every column counts.",
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice |\tC4  D4  E4  F4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "grid-size",
        "error",
        "A block is larger than any chart: too many bars or parts, or a row too long.",
        _TOO_MANY_BARS,
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "count-missing",
        "error",
        "A system has no count row, so nothing in it has a time.",
        ("```notation\nid: a\n\nvoice | C4  D4  E4  F4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "count-double",
        "error",
        "A system has two count rows.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "count-mark",
        "error",
        "A sign in the count row is neither a number nor a division mark, or it divides no beat.",
        ("```notation\nid: a\n\ncount | 1 ? 2 & 3 & 4 & |\nvoice | C4  D4  E4  F4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1 & 2 & 3 & 4 & |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "count-direction",
        "error",
        "A direction in round brackets is no meter and no ending, or stands inside a bar.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | (7/9) 1   2   3   4   |\n"
            "voice |       C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | (4/4) 1   2   3   4   |\n"
            "voice |       C4  D4  E4  F4  |\n"
            "```\n"
        ),
    ),
    Code(
        "count-empty",
        "error",
        "A bar of the count row counts nothing.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |       |\n"
            "voice | C4  D4  E4  F4  |       |\n"
            "```\n"
        ),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "count-order",
        "error",
        "The beats of a bar are not counted one after another, or past the meter.",
        ("```notation\nid: a\n\ncount | 1   2   4   |\nvoice | C4  D4  E4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "count-start",
        "error",
        "A bar starts after 1 although the bar before it is complete.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   | 2   3   4   |\n"
            "voice | C4  D4  E4  F4  | G4  A4  B4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  | G4  A4  B4  C5  |\n"
            "```\n"
        ),
    ),
    Code(
        "count-short",
        "error",
        "A bar ends before its meter does, and no pickup or repeat makes up for it.",
        ("```notation\nid: a\n\ncount | 1   2   3   |\nvoice | C4  D4  E4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "bar-line",
        "error",
        "A bar line of a row does not stand under one of the count row.",
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4 |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "off-count",
        "error",
        "Something starts between two columns of the count row.",
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4   D4 E4  F4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "row-unknown",
        "error",
        "A row has a name that is no row's and no part's.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "chrod | C               |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "chord | C               |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
    ),
    Code(
        "row-double",
        "error",
        "A row that can stand once stands twice.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "chord | C               |\n"
            "chord | F               |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "chord | C       F       |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
    ),
    Code(
        "row-alone",
        "error",
        "A row that speaks of the part above it stands under no part.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "words | so  it  be- gan |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "words | so  it  be- gan |\n"
            "```\n"
        ),
    ),
    Code(
        "part-double",
        "error",
        "A part stands twice in one system.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "voice | E4  F4  G4  A4  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count   | 1   2   3   4   |\n"
            "voice   | C4  D4  E4  F4  |\n"
            "voice 2 | E4  F4  G4  A4  |\n"
            "```\n"
        ),
    ),
    Code(
        "part-empty",
        "error",
        "A part is named and has no rows.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "guitar\n"
            "```\n"
        ),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "part-unused",
        "warning",
        "The head sets up a part that no row plays.",
        (
            "```notation\n"
            "id: a\n"
            "guitar: half-step down\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "```\n"
        ),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "instrument",
        "error",
        "A part's tuning, capo or reading cannot be read, or does not fit its rows.",
        (
            "```notation\n"
            "id: a\n"
            "bass: dropp D\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "bass  | C2  D2  E2  F2  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "bass: drop D\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "bass  | C2  D2  E2  F2  |\n"
            "```\n"
        ),
    ),
    Code(
        "pitch",
        "error",
        "A pitch cannot be read, or has no octave.",
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C   D4  E4  F4  |\n```\n"),
        ("```notation\nid: a\n\ncount | 1   2   3   4   |\nvoice | C4  D4  E4  F4  |\n```\n"),
    ),
    Code(
        "string-count",
        "error",
        "A part has fewer or more string rows than strings.",
        (
            "```notation\n"
            "id: a\n"
            "guitar: standard\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  D   | 0---0---0---0---|\n"
            "  A   | ----------------|\n"
            "  E   | ----------------|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "guitar: standard\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  4   | 0---0---0---0---|\n"
            "```\n"
        ),
    ),
    Code(
        "string-label",
        "error",
        "A string row's label is not the name of the string in its place.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  E   | 0---0---0---0---|\n"
            "  A   | ----------------|\n"
            "  D   | ----------------|\n"
            "  G   | ----------------|\n"
            "  B   | ----------------|\n"
            "  e   | ----------------|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---0---0---0---|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-sign",
        "error",
        "A sign on a string row means nothing there.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---?---3---3---|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---3---3---3---|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-fret",
        "error",
        "A fret number is past the end of any neck.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---57--3---3---|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---5---7---3---|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-direction",
        "warning",
        "A hammer-on does not go up, or a pull-off does not go down.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  1   | 5h--3-----------|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  1   | 3h--5p--3-------|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-two-ways",
        "error",
        "Two digits that touch stand under two counts, and may be one fret or two notes.",
        ("```notation\nid: a\nmeter: 2/4\n\ncount | 1e&a2e&a|\nguitar\n  1   | 12--3---|\n```\n"),
        (
            "```notation\n"
            "id: a\n"
            "meter: 2/4\n"
            "\n"
            "count | 1 e & a 2 e & a |\n"
            "guitar\n"
            "  1   | 12------3-------|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-join",
        "error",
        "A hammer-on, pull-off or another joining sign has no note to start from or to lead to.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | --------5---5---|\n"
            "  E   | 0---3h----------|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ------------5---|\n"
            "  E   | 0---3h--5-------|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-bend",
        "error",
        "A bend goes down, or further than a string bends.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---7b5-3-------|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | 0---7b9-3-------|\n"
            "```\n"
        ),
    ),
    Code(
        "tab-harmonic",
        "error",
        "A harmonic is asked for at a fret where the string has no node.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | <6>-------------|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "guitar\n"
            "  e   | ----------------|\n"
            "  B   | ----------------|\n"
            "  G   | ----------------|\n"
            "  D   | ----------------|\n"
            "  A   | ----------------|\n"
            "  E   | <7>-------------|\n"
            "```\n"
        ),
    ),
    Code(
        "drum-sign",
        "error",
        "A sign on a drum row is no way to hit it.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "drums\n"
            "  SD  | --- ?---o---o---|\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "drums\n"
            "  SD  | ----o---o---o---|\n"
            "```\n"
        ),
    ),
    Code(
        "words-many",
        "error",
        "A bar has more syllables than notes to sing them on.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4      E4      |\n"
            "words | one two three   |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4      E4      |\n"
            "words | one     two     |\n"
            "```\n"
        ),
    ),
    Code(
        "degree-text",
        "error",
        "A word of the degree row is no degree.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4  D4  E4  F4  |\n"
            "degree | R   9   x3  11  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4  D4  E4  F4  |\n"
            "degree | R   9   3   11  |\n"
            "```\n"
        ),
    ),
    Code(
        "degree-nowhere",
        "error",
        "A degree stands where its part starts no note.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4      E4      |\n"
            "degree | R   9   3       |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4      E4      |\n"
            "degree | R       3       |\n"
            "```\n"
        ),
    ),
    Code(
        "degree-heard",
        "warning",
        "The author heard another degree than the notes and chords give.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4  D4  E4  F4  |\n"
            "degree | R   9   b3  11  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4  D4  E4  F4  |\n"
            "degree | R   9   3   11  |\n"
            "```\n"
        ),
    ),
    Code(
        "degree-kept",
        "note",
        "The author keeps a degree against the engine with an exclamation mark.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4  D4  E4  F4  |\n"
            "degree | R   9   b3! 11  |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count  | 1   2   3   4   |\n"
            "chord  | C               |\n"
            "voice  | C4  D4  E4  F4  |\n"
            "degree | R   9   3   11  |\n"
            "```\n"
        ),
    ),
    Code(
        "mark-sign",
        "error",
        "A word of the mark row is no mark.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "mark  | !               |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4  D4  E4  F4  |\n"
            "mark  | >               |\n"
            "```\n"
        ),
    ),
    Code(
        "mark-nowhere",
        "error",
        "A mark stands where its part starts no note.",
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4      E4      |\n"
            "mark  |     >           |\n"
            "```\n"
        ),
        (
            "```notation\n"
            "id: a\n"
            "\n"
            "count | 1   2   3   4   |\n"
            "voice | C4      E4      |\n"
            "mark  |         >       |\n"
            "```\n"
        ),
    ),
    Code(
        "changes-empty",
        "error",
        "A changes block has no bars.",
        ("```changes\nid: a\n```\n"),
        ("```changes\nid: a\n\n| C | G |\n```\n"),
    ),
    Code(
        "changes-line",
        "error",
        "A line of a progression has no bar line.",
        ("```changes\nid: a\n\nC G Am F\n```\n"),
        ("```changes\nid: a\n\n| C | G | Am | F |\n```\n"),
    ),
    Code(
        "changes-bar",
        "error",
        "A bar of a progression is empty, or repeats or holds what is not there.",
        ("```changes\nid: a\n\n| % | C |\n```\n"),
        ("```changes\nid: a\n\n| C | % |\n```\n"),
    ),
    Code(
        "changes-beats",
        "error",
        "With / and . every beat of the bar has its sign, and there are too few or too many.",
        ("```changes\nid: a\n\n| C / / |\n```\n"),
        ("```changes\nid: a\n\n| C / / / |\n```\n"),
    ),
    Code(
        "changes-split",
        "warning",
        "Chords share a bar of an uneven meter, and it is not said which beats they take.",
        ("```changes\nid: a\nmeter: 7/8\n\n| C G |\n```\n"),
        ("```changes\nid: a\nmeter: 7/8\n\n| C . G |\n```\n"),
    ),
)
