"""A picture or score is published as a file: nothing in it may run or load anything.

What runs in SVG: SVG 2, chapters 15 and 16; OWASP's list of XML attacks (entities, external
entities, expansion) for the rest.
"""

import pytest

from sitegen.site.active_content import find_active

SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">{}</svg>'
LAUGHS = (
    '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">]>'
    + SVG.format("<text>&c;</text>")
)

HARMLESS = [
    SVG.format(""),
    "<svg/>",
    '<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n' + SVG.format("<g/>"),
    '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" '
    '"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">' + SVG.format("<title>On</title>"),
    SVG.format('<defs><path id="a" d="M0 0"/></defs><use xlink:href="#a" fill="url(#b)"/>'),
    SVG.format("<style>path { fill: url(#a); stroke: red }</style>"),
    SVG.format('<image href="data:image/png;base64,AAAA"/>'),
    SVG.format('<a href="https://example.org/"><text>there</text></a>'),
    SVG.format('<animate attributeName="opacity" from="0" to="1"/>'),
    SVG.format('<g xmlns:tool="urn:tool" tool:path="C:\\a\\b.svg" tool:source="url(b)"/>'),
    SVG.format('<!-- a note --><text font-family="Serif">onload=</text>'),
]
ACTIVE = [
    SVG.format("<script>alert(1)</script>"),
    SVG.format('<script href="a.js"/>'),
    SVG.format('<g onload="alert(1)"/>'),
    SVG.format('<g onLoad="alert(1)"/>').replace("onLoad", "OnLoad"),
    SVG.format('<a href="javascript:alert(1)"><text>x</text></a>'),
    SVG.format('<a xlink:href="java&#10;script:alert(1)"><text>x</text></a>'),
    SVG.format('<a href="&#106;avascript:alert(1)"/>'),
    SVG.format('<a href="data:text/html,x"/>'),
    SVG.format('<a><set attributeName="href" to="javascript:alert(1)"/></a>'),
    SVG.format('<a><animate attributeName="xlink:href" values="javascript:alert(1)"/></a>'),
    SVG.format('<set attributeName="onload" to="alert(1)"/>'),
    SVG.format("<foreignObject><p>x</p></foreignObject>"),
    SVG.format('<x:script xmlns:x="http://www.w3.org/1999/xhtml">alert(1)</x:script>'),
    SVG.format('<x:iframe xmlns:x="http://www.w3.org/1999/xhtml" src="x"/>'),
    SVG.format('<m:math xmlns:m="http://www.w3.org/1998/Math/MathML"/>'),
    SVG.format('<image href="https://example.org/count.png"/>'),
    SVG.format('<image href="data:image/svg+xml;base64,AAAA"/>'),
    SVG.format('<use href="other.svg#a"/>'),
    SVG.format("<style>@import 'https://example.org/a.css';</style>"),
    SVG.format("<style>g { background: url( 'https://example.org/a') }</style>"),
    SVG.format("<style>@\\69mport 'https://example.org/a.css';</style>"),
    SVG.format('<g style="fill: url(https://example.org/a)"/>'),
    '<?xml-stylesheet href="a.xsl" type="text/xsl"?>' + SVG.format(""),
    LAUGHS,
    '<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]>' + SVG.format("&a;"),
    '<!DOCTYPE svg [<!ATTLIST svg onload CDATA "alert(1)">]>' + SVG.format(""),
    '<?xml version="1.0" encoding="UTF-7"?>' + SVG.format(""),
    SVG.format("<g>"),
    SVG.format("<g>" * 5000 + "</g>" * 5000),
    "<html/>",
    "",
]


@pytest.mark.parametrize("text", HARMLESS)
def test_a_plain_picture_is_harmless(text: str) -> None:
    assert find_active(text.encode(), is_picture=True) == ""


@pytest.mark.parametrize("text", ACTIVE)
def test_what_runs_or_loads_is_found(text: str) -> None:
    assert find_active(text.encode(), is_picture=True)


def test_no_encoding_hides_anything() -> None:
    text = SVG.format("<script>alert(1)</script>")
    wide = f'<?xml version="1.0" encoding="UTF-16"?>{text}'

    assert find_active(wide.encode("utf-16"), is_picture=True) == "it is not UTF-8"
    assert find_active(text.encode("utf-16-le"), is_picture=True) == "it is not UTF-8"
    assert "<script>" in find_active(b"\xef\xbb\xbf" + text.encode(), is_picture=True)


def test_the_line_is_told() -> None:
    text = SVG.format("\n\n<script>alert(1)</script>")

    assert find_active(text.encode(), is_picture=True) == "it holds <script>, line 3"


SCORE = '<score-partwise version="4.0"><part-list>{}</part-list></score-partwise>'


@pytest.mark.parametrize(
    ("text", "is_harmless"),
    [
        (SCORE.format('<frame/><link href="a"/>'), True),
        ('<!DOCTYPE score-partwise PUBLIC "-//X" "http://x/p.dtd">' + SCORE.format(""), True),
        (SCORE.format('<h:script xmlns:h="http://www.w3.org/1999/xhtml"/>'), False),
        (SCORE.format('<s:svg xmlns:s="http://www.w3.org/2000/svg" onload="x"/>'), False),
        ('<html xmlns="http://www.w3.org/1999/xhtml"/>', False),
        ('<?xml-stylesheet href="a.xsl"?>' + SCORE.format(""), False),
    ],
)
def test_a_score_holds_nothing_that_a_browser_draws(text: str, *, is_harmless: bool) -> None:
    assert (find_active(text.encode(), is_picture=False) == "") is is_harmless
