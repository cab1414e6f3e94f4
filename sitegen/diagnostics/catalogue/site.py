"""Codes for faults in the settings, in the names of files and in references to charts."""

from sitegen.diagnostics.catalogue.code import Code

_VERSE = """
```changes
id: verse
key: C
meter: 4/4

| C | F | G | C |
```
"""
_CHORUS = """
```changes
id: chorus
key: C
meter: 4/4

| F | G | C | C |
```
"""
_PICTURE = (
    "breakdowns/example/stage.svg",
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>\n',
)
_ACTIVE = _PICTURE[1].replace("/>", " onload='play()'/>")
_LARGE = f"{_PICTURE[1]}{' ' * 2_000_000}"
_OTHER = ("breakdowns/low-tide/article.md", "Another write-up.\n")


def _video(line: str) -> str:
    video = f"video:\n  {line}\n  holder: The Gantry\n"
    return f"---\ntitle: Low Tide\nstatus: draft\n{video}---\n\nA write-up.\n"


def _moved(address: str) -> str:
    return f"---\ntitle: Low Tide\nstatus: draft\nmoved-from: [{address}]\n---\n\nA write-up.\n"


SITE_CODES: tuple[Code, ...] = (
    Code(
        "settings-syntax",
        "error",
        "The settings are not written as TOML.",
        "title = Side Two\n",
        'title = "Side Two"\n',
        "site.toml",
    ),
    Code(
        "settings-field",
        "error",
        "A line of the settings has a name that no setting has.",
        'title = "Side Two"\ntagliine = "Songs, taken apart"\n',
        'title = "Side Two"\ntagline = "Songs, taken apart"\n',
        "site.toml",
    ),
    Code(
        "settings-value",
        "error",
        "The value of a setting is not of the kind that belongs there.",
        'title = "Side Two"\nlanguage = "the queen\'s"\n',
        'title = "Side Two"\nlanguage = "en-GB"\n',
        "site.toml",
    ),
    Code(
        "settings-missing",
        "error",
        "The settings lack the title, without which no page can be made.",
        'tagline = "Songs, taken apart"\n',
        'title = "Side Two"\ntagline = "Songs, taken apart"\n',
        "site.toml",
    ),
    Code(
        "settings-theme",
        "error",
        "The settings name a theme that is neither one of ours nor a folder with templates.",
        'title = "Side Two"\ntheme = "linen"\n',
        'title = "Side Two"\ntheme = "liner"\n',
        "site.toml",
    ),
    Code(
        "settings-menu",
        "error",
        "The menu lists a page that is not among the pages.",
        'title = "Side Two"\nmenu = ["abuot"]\n',
        'title = "Side Two"\nmenu = ["about"]\n',
        "site.toml",
        beside=(("pages/about.md", "---\ntitle: About\n---\n\nWho writes here.\n"),),
    ),
    Code(
        "address-unusable",
        "error",
        "The name of a folder or page would be part of an address and cannot be: for its signs, "
        "for its length, or because some system keeps it for a device.",
        "A write-up.\n",
        "A write-up.\n",
        "breakdowns/low tide/article.md",
        good_file="breakdowns/low-tide/article.md",
    ),
    Code(
        "address-double",
        "error",
        "Two write-ups or pages differ only in capitals or in how an accent is stored, which many "
        "systems take for the same name.",
        "A write-up.\n",
        "A write-up.\n",
        "breakdowns/Low-Tide/article.md",
        good_file="breakdowns/high-tide/article.md",
        beside=(_OTHER,),
    ),
    Code(
        "address-reserved",
        "error",
        "A page has a name under which the site keeps something else.",
        "---\ntitle: Fonts\n---\n\nA page.\n",
        "---\ntitle: Fonts\n---\n\nA page.\n",
        "pages/fonts.md",
        good_file="pages/our-fonts.md",
    ),
    Code(
        "moved-from-taken",
        "warning",
        "A write-up has an old address where a page stands, or which another write-up has too, so "
        "that nothing can lead on from there.",
        _moved("/about/"),
        _moved("/notes/low-tide/"),
        "breakdowns/low-tide/article.md",
        beside=(("pages/about.md", "---\ntitle: About\n---\n\nWho writes here.\n"),),
    ),
    Code(
        "content-link",
        "error",
        "A symbolic link leads out of the content folder, so that what would be published is not "
        "what stands there.",
        "A write-up.\n",
        "A write-up.\n",
        "breakdowns/low-tide/article.md",
        link="../../../elsewhere.md",
    ),
    Code(
        "content-unreadable",
        "error",
        "A file cannot be read: it is a folder or a device, belongs to somebody else, or is "
        "larger than any text.",
        "A write-up.\n",
        "A write-up.\n",
        "breakdowns/low-tide/article.md/article.md",
        good_file="breakdowns/low-tide/article.md",
    ),
    Code(
        "content-stray",
        "warning",
        "Something among the write-ups is not part of any, and nobody would find it on the site.",
        "A write-up.\n",
        "A write-up.\n",
        "breakdowns/low-tide.md",
        good_file="breakdowns/low-tide/article.md",
    ),
    Code(
        "page-large",
        "error",
        "A write-up has more charts, or more files beside it, than one page can bear.",
        "```changes\nkey: C\nmeter: 4/4\n\n| C |\n```\n\n" * 1001,
        _VERSE,
    ),
    Code(
        "chart-id-double",
        "error",
        "Two charts of a write-up have the same id, so that nothing can speak of one of them.",
        _VERSE + _CHORUS.replace("chorus", "verse"),
        _VERSE + _CHORUS,
    ),
    Code(
        "chart-unknown",
        "error",
        "The prose speaks of a chart by an id that no chart of the write-up has.",
        f"{_VERSE}\nIt all comes home in {{see vers}}.\n",
        f"{_VERSE}\nIt all comes home in {{see verse}}.\n",
    ),
    Code(
        "fact-unknown",
        "error",
        "The prose cites a figure that is not among those found in the chart.",
        f"{_VERSE}\nThe verse has {{fact verse barz}} bars.\n",
        f"{_VERSE}\nThe verse has {{fact verse bars}} bars.\n",
    ),
    Code(
        "fact-differs",
        "error",
        "The prose says one figure and the chart has another.",
        f"{_VERSE}\nThe verse has {{fact verse bars = 8}} bars.\n",
        f"{_VERSE}\nThe verse has {{fact verse bars = 4}} bars.\n",
    ),
    Code(
        "link-nowhere",
        "error",
        "A link leads to nothing: no such heading or chart, no such page, no such file.",
        "## The bridge\n\nBack to [the bridge](#the-brigde).\n",
        "## The bridge\n\nBack to [the bridge](#the-bridge).\n",
    ),
    Code(
        "image-missing",
        "error",
        "The text shows a picture that does not lie beside it.",
        "![The stage from above](stag.svg)\n",
        "![The stage from above](stage.svg)\n",
        beside=(_PICTURE,),
    ),
    Code(
        "file-name-taken",
        "error",
        "A file beside the text has the name of a file that is made of a chart to take away.",
        f"{_VERSE}\n![The stage from above](chart-verse.svg)\n",
        f"{_VERSE}\n![The stage from above](stage.svg)\n",
        beside=(_PICTURE, (_PICTURE[0].replace("stage", "chart-verse"), _PICTURE[1])),
    ),
    Code(
        "file-name-double",
        "error",
        "Two files beside the text differ only in capitals or in how an accent is stored, which "
        "many systems take for the same name.",
        "![The stage from above](stage.svg) ![The hall from above](Stage.svg)\n",
        "![The stage from above](stage.svg) ![The hall from above](hall.svg)\n",
        beside=tuple(
            (_PICTURE[0].replace("stage", name), _PICTURE[1])
            for name in ("stage", "Stage", "hall")
        ),
    ),
    Code(
        "file-name-unusable",
        "error",
        "A file beside the text has a name that some systems cannot hold: a device's name, one "
        "that ends with a dot, or one of very many letters.",
        "![The stage from above](con.svg)\n",
        "![The stage from above](stage.svg)\n",
        beside=(_PICTURE, (_PICTURE[0].replace("stage", "con"), _PICTURE[1])),
    ),
    Code(
        "file-kind",
        "error",
        "A file beside the text is of a kind that a browser runs, or that nobody knows; what is "
        "published must only be shown, played or kept.",
        "[The stage from above](stage.html)\n",
        "[The stage from above](stage.svg)\n",
        beside=(_PICTURE, (_PICTURE[0].replace("svg", "html"), "<p>The stage.</p>\n")),
    ),
    Code(
        "file-active",
        "error",
        "A picture or a score runs or loads something: a script, a style sheet, a frame. It would "
        "be a document of the site, and its script could do what the site's own can.",
        "![The stage from above](live.svg)\n",
        "![The stage from above](stage.svg)\n",
        beside=(_PICTURE, (_PICTURE[0].replace("stage", "live"), _ACTIVE)),
    ),
    Code(
        "file-unreadable",
        "error",
        "A file beside the text is larger than one of its kind may be, or the system does not let "
        "us read it.",
        "![The stage from above](large.svg)\n",
        "![The stage from above](stage.svg)\n",
        beside=(_PICTURE, (_PICTURE[0].replace("stage", "large"), _LARGE)),
    ),
    Code(
        "recording-missing",
        "error",
        "The front matter names a file to listen to that does not lie beside the text.",
        _video("file: low-tied.wav"),
        _video("file: low-tide.wav"),
        beside=(("breakdowns/example/low-tide.wav", "RIFF"),),
    ),
    Code(
        "recording-pattern",
        "error",
        "The front matter names a recording as its host does, and the settings name no host.",
        _video("embed: low-tide"),
        _video('embed: "https://example.org/frame/low-tide?start={seconds}"'),
    ),
    Code(
        "image-outside",
        "error",
        "The text shows a picture from outside the folder of the write-up: another write-up's, or "
        "one on another server, where it may change or vanish.",
        "![The stage from above](https://example.org/stage.svg)\n",
        "![The stage from above](stage.svg)\n",
        beside=(_PICTURE,),
    ),
)
