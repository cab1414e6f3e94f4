"""Codes for faults found in: article.

An example that must hold bytes which are no UTF-8 has them as the code points U+DC80 to U+DCFF
(the error handler `surrogateescape`).
"""

from sitegen.diagnostics.catalogue.code import Code


def _front(*lines: str) -> str:
    return "\n".join(("---", *lines, "---", "", "The verse has eight bars.", ""))


_GOOD_FRONT = _front("title: Low Tide")
_FRAME = "https://example.org/frame/7?start={seconds}"
_PUBLISHED = ("status: published", "published: 2026-05-04")
_SOURCES = ("sources:", "  - who: The drummer", "    what: counted it in for me")
_NOTES = """
```notation
key: C
meter: 4/4

count | 1   2   3   4   |
voice | C5  D5  E5  r   |
```
"""
_GOOD_TEXT = "The verse has eight bars.\n"

ARTICLE_CODES: tuple[Code, ...] = (
    Code(
        "text-bytes",
        "error",
        "The file is not UTF-8 text.",
        "A caf\udce9 in E minor.\n",
        "A café in E minor.\n",
    ),
    Code(
        "text-control",
        "error",
        "A control character stands in the file: invisible, and unfit for a page.",
        "The verse\x08 has eight bars.\n",
        _GOOD_TEXT,
    ),
    Code(
        "text-marks",
        "error",
        "So many accents and other marks stand on one letter that they cover what is around it.",
        f"The re{chr(0x301) * 40}prise has eight bars.\n",
        "The reprise has eight bars.\n",
    ),
    Code(
        "text-long",
        "error",
        "A paragraph is longer than anybody reads, the links repeat a very long address, or the "
        "file is no text at all.",
        f"{'The verse again. ' * 700}\n",
        _GOOD_TEXT,
    ),
    Code(
        "front-missing",
        "error",
        "A file does not start with front matter: a line ---, fields, a line ---.",
        "---title: Low Tide\n\nThe verse has eight bars.\n",
        _GOOD_FRONT,
    ),
    Code(
        "front-open",
        "error",
        "The front matter has no line --- at its end.",
        "---\ntitle: Low Tide\n\nThe verse has eight bars.\n",
        _GOOD_FRONT,
    ),
    Code(
        "front-syntax",
        "error",
        "A line of the front matter cannot be taken apart into fields and values.",
        _front("title: Low Tide: the bass line"),
        _front('title: "Low Tide: the bass line"'),
    ),
    Code(
        "front-title",
        "error",
        "The front matter has no title.",
        _front("summary: A song in two chords."),
        _GOOD_FRONT,
    ),
    Code(
        "front-field",
        "error",
        "The front matter has a field that means nothing there.",
        _front("title: Low Tide", "sumary: A song in two chords."),
        _front("title: Low Tide", "summary: A song in two chords."),
    ),
    Code(
        "front-double",
        "error",
        "The front matter has the same field twice.",
        _front("title: Low Tide", "title: High Tide"),
        _GOOD_FRONT,
    ),
    Code(
        "front-value",
        "error",
        "A field of the front matter has a value that it cannot take.",
        _front("title: Low Tide", "published: 2026-02-30"),
        _front("title: Low Tide", "published: 2026-02-28"),
    ),
    Code(
        "front-order",
        "error",
        "The write-up was updated before it was published.",
        _front("title: Low Tide", "published: 2026-05-04", "updated: 2026-05-03"),
        _front("title: Low Tide", "published: 2026-05-04", "updated: 2026-05-05"),
    ),
    Code(
        "front-undated",
        "warning",
        "A published write-up does not say since when it is.",
        _front("title: Low Tide", "status: published"),
        _front("title: Low Tide", "status: published", "published: 2026-05-04"),
    ),
    Code(
        "rights-holder",
        "warning",
        "A published write-up quotes notes of a song and does not say whose the song is. No "
        "number of bars is safe to quote by itself; a licensed adviser decides.",
        _front("title: Low Tide", *_PUBLISHED, *_SOURCES) + _NOTES,
        _front("title: Low Tide", *_PUBLISHED, *_SOURCES, "rights:", "  holder: The Gantry")
        + _NOTES,
    ),
    Code(
        "sources-missing",
        "warning",
        "A published write-up quotes notes of a song and names no source for what it says.",
        _front("title: Low Tide", *_PUBLISHED, "rights:", "  holder: The Gantry") + _NOTES,
        _front("title: Low Tide", *_PUBLISHED, *_SOURCES, "rights:", "  holder: The Gantry")
        + _NOTES,
    ),
    Code(
        "front-holder",
        "warning",
        "The page plays a recording and does not say whose it is.",
        _front("title: Low Tide", "video:", f"  embed: {_FRAME}"),
        _front("title: Low Tide", "video:", f"  embed: {_FRAME}", "  holder: The Gantry"),
    ),
    Code(
        "heading-level",
        "warning",
        "A heading in the text has the level of the page's title.",
        "# The verse\n\nEight bars.\n",
        "## The verse\n\nEight bars.\n",
    ),
    Code(
        "block-name",
        "error",
        "No kind of block has this name, or more than its name stands on the opening line.",
        "```chnages\nid: verse\n\n| C | G |\n```\n",
        "```changes\nid: verse\n\n| C | G |\n```\n",
    ),
    Code(
        "block-open",
        "error",
        "A block has no closing line.",
        "```changes\nid: verse\n\n| C | G |\n",
        "```changes\nid: verse\n\n| C | G |\n```\n",
    ),
    Code(
        "table-cells",
        "warning",
        "A row of a table has more cells than its first row; they are not shown.",
        "| Bar | Chord |\n|---|---|\n| 1 | G | too much |\n",
        "| Bar | Chord |\n|---|---|\n| 1 | G |\n",
    ),
    Code(
        "nesting",
        "error",
        "Quotes and lists stand so deep inside one another that no page could show it.",
        "> " * 70 + "The verse has eight bars.\n",
        "> " * 3 + "The verse has eight bars.\n",
    ),
    Code(
        "role-name",
        "error",
        "No inline role has this name, though what stands in the braces reads like one.",
        "It rests on {chrod G}.\n",
        "It rests on {chord G}.\n",
    ),
    Code(
        "role-unknown",
        "warning",
        "Braces hold words as a role does, and no role has this name.",
        "The singer {or so they say} was late.\n",
        "The singer \\{or so they say} was late.\n",
    ),
    Code(
        "role-argument",
        "error",
        "An inline role says nothing behind its name.",
        "It rests on {chord}.\n",
        "It rests on {chord G}.\n",
    ),
    Code(
        "role-value",
        "error",
        "What stands behind the name of an inline role cannot be read.",
        "The voice enters at {at 1:75}.\n",
        "The voice enters at {at 1:15}.\n",
    ),
    Code(
        "role-open",
        "error",
        "An inline role has no closing brace.",
        "It rests on {chord G and stays.\n",
        "It rests on {chord G} and stays.\n",
    ),
    Code(
        "image-alt",
        "warning",
        "A picture has no description for those who cannot see it.",
        "![](board.png)\n",
        _GOOD_TEXT,
    ),
    Code(
        "link-unsafe",
        "error",
        "A link runs a program or opens a file in place of leading to a page.",
        "[Listen](javascript:play()).\n",
        "[Listen](https://example.org/listen).\n",
    ),
    Code(
        "html-unsafe",
        "error",
        "HTML in the text is broken, or would run or load something on the page.",
        "<script>play()</script>\n",
        "Press <kbd>space</kbd>.\n",
    ),
    Code(
        "html-open",
        "error",
        "An HTML element is opened and not closed, or the other way round.",
        "Press <kbd>space to hear it.\n",
        "Press <kbd>space</kbd> to hear it.\n",
    ),
    Code(
        "footnote-unknown",
        "warning",
        "A footnote's mark has no note.",
        "Tuned down a step.[^tuning]\n",
        "Tuned down a step.[^tuning]\n\n[^tuning]: By ear.\n",
    ),
    Code(
        "footnote-unused",
        "warning",
        "Nothing in the text leads to a note, so that it is not shown.",
        "Tuned down a step.\n\n[^tuning]: By ear.\n",
        "Tuned down a step.[^tuning]\n\n[^tuning]: By ear.\n",
    ),
)
