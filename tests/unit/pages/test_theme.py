"""The liner theme's pages: sound HTML, safe against hostile titles, at home in any folder."""

import base64
import io
import re
from collections import Counter
from dataclasses import fields, replace
from datetime import date
from html.parser import HTMLParser
from pathlib import Path

import html5lib
import pytest

from sitegen.article.front import Correction, FrontMatter, Moment, Rights, Song, SourceNote
from sitegen.engraving import FAMILY
from sitegen.kinds.notation import NotationDrawing
from sitegen.pages.theme import NOTATION_FONT, TEMPLATES, Theme, load_theme
from sitegen.pages.views import (
    ArchiveEntry,
    ArchiveView,
    ArticleView,
    ChartView,
    PageView,
    ValueLink,
)
from sitegen.score.key import Key

LINER = Path(__file__).parents[3] / "themes" / "liner"
NAMES = (
    "article",
    "bare article",
    "archive",
    "empty archive",
    "page",
    "bare page",
    "missing",
    "bare missing",
)
HOSTILE = "\"><script>alert(1)</script>{{ 7 * 7 }}&'♭"


class Elements(HTMLParser):
    """Collects every start tag with its attributes."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep one tag, as the parser asks."""
        self.found.append((tag, dict(attrs)))

    def values(self, attribute: str) -> list[str]:
        """Return what every element that has the attribute says in it."""
        return [attrs[attribute] or "" for _, attrs in self.found if attribute in attrs]

    def count(self, tag: str) -> int:
        """Return how many elements there are of a kind."""
        return sum(name == tag for name, _ in self.found)


@pytest.mark.parametrize("name", NAMES)
def test_a_page_is_html_without_a_fault(pages: dict[str, str], name: str) -> None:
    # The parsing rules of the HTML standard, as html5lib has them.
    html5lib.HTMLParser(strict=True).parse(pages[name])


def test_a_fault_in_html_is_seen() -> None:
    with pytest.raises(html5lib.html5parser.ParseError):
        html5lib.HTMLParser(strict=True).parse("<!DOCTYPE html><title>x</title><p></div>")


@pytest.mark.parametrize("name", NAMES)
def test_a_page_has_one_main_heading(pages: dict[str, str], name: str) -> None:
    assert Elements(pages[name]).count("h1") == 1


@pytest.mark.parametrize("name", NAMES)
def test_no_level_of_heading_is_left_out(pages: dict[str, str], name: str) -> None:
    levels = [int(tag[1]) for tag, _ in Elements(pages[name]).found if re.fullmatch("h[1-6]", tag)]
    assert all(after <= before + 1 for before, after in zip([0, *levels], levels, strict=False))


@pytest.mark.parametrize("name", NAMES)
def test_every_id_stands_once(pages: dict[str, str], name: str) -> None:
    ids = Elements(pages[name]).values("id")
    assert [identity for identity, times in Counter(ids).items() if times > 1] == []


@pytest.mark.parametrize("name", NAMES)
def test_what_is_pointed_to_is_there(pages: dict[str, str], name: str) -> None:
    elements = Elements(pages[name])
    inner = [href[1:] for href in elements.values("href") if href.startswith("#")]
    labels = " ".join(elements.values("aria-labelledby")).split()
    assert {*inner, *labels} <= set(elements.values("id"))


@pytest.mark.parametrize("name", NAMES)
def test_a_page_asks_no_other_host(pages: dict[str, str], name: str) -> None:
    # The words of JSON-LD are named by an address that nothing is asked of.
    words = '"@context":"https://schema.org"'
    assert re.findall(r"(?:https?:)?//[\w.]+", pages[name].replace(words, "")) == []


@pytest.mark.parametrize("name", NAMES)
def test_a_page_has_landmarks_and_a_way_past_the_menu(pages: dict[str, str], name: str) -> None:
    elements = Elements(pages[name])
    first_link = next(attrs for tag, attrs in elements.found if tag == "a")
    assert first_link["href"] == "#main_text"
    assert ("main", "main_text") in [(tag, attrs.get("id")) for tag, attrs in elements.found]
    assert elements.found[0] == ("html", {"lang": "en"})
    assert elements.count("main") == 1


@pytest.mark.parametrize("name", NAMES)
def test_scripts_are_files_of_the_site_or_data(pages: dict[str, str], name: str) -> None:
    scripts = [attrs for tag, attrs in Elements(pages[name]).found if tag == "script"]
    data = ("application/ld+json", "application/json")
    assert all(attrs.get("src") or attrs.get("type") in data for attrs in scripts)


def test_the_scripts_of_a_page_are_published(pages: dict[str, str], theme: Theme) -> None:
    published = theme.assets().keys()
    for html in pages.values():
        loaded = Elements(html).values("src")
        scripts = [src.replace("../", "") for src in loaded if src.endswith(".js")]
        assert len(scripts) == 2
        assert {*scripts} <= published


def test_the_switch_of_schemes_is_hidden_until_its_script_runs(pages: dict[str, str]) -> None:
    labels = [attrs for tag, attrs in Elements(pages["article"]).found if tag == "label"]
    assert "hidden" in next(attrs for attrs in labels if attrs.get("class") == "scheme control")


def test_links_start_from_the_page(pages: dict[str, str], theme: Theme) -> None:
    hrefs = Elements(pages["article"]).values("href")
    assert f"../../{theme.stylesheet}" in hrefs
    assert "../../index.html" in hrefs
    assert theme.stylesheet in Elements(pages["bare article"]).values("href")


def test_the_head_tells_what_the_page_is(theme: Theme, article: ArticleView) -> None:
    site = replace(article.site, address="https://turnaround.example/low-tide/")
    html = theme.render_article(replace(article, site=site))
    named = {attrs.get("name"): attrs.get("content") for _, attrs in Elements(html).found}
    assert named["description"] == "Low Tide by The Harbour Lamps. Two chords without a third."
    assert named["generator"] == "sitegen 0"
    assert '<link rel="canonical" href="https://turnaround.example/low-tide/">' in html


def test_a_draft_says_so(theme: Theme, article: ArticleView, archive: ArchiveView) -> None:
    stamp = '<p class="stamp">Draft'
    assert stamp in theme.render_article(article)
    assert stamp not in theme.render_article(replace(article, draft=False))
    assert theme.render_archive(archive).count(stamp) == 1


def test_hostile_front_matter_stays_text(theme: Theme, article: ArticleView) -> None:
    words = (HOSTILE,)
    song = Song(HOSTILE, HOSTILE, 2011, HOSTILE, words, words, words, words, HOSTILE)
    front = FrontMatter(
        title=HOSTILE,
        summary=HOSTILE,
        song=replace(song, tuning=HOSTILE),
        moments=(Moment(1, HOSTILE),),
        topics=words,
        sources=(SourceNote(HOSTILE),),
        corrections=(Correction(date(2026, 1, 1), HOSTILE),),
        rights=Rights(HOSTILE, HOSTILE),
    )
    html = theme.render_article(replace(article, front=front))
    html5lib.HTMLParser(strict=True).parse(html)
    plain = theme.render_article(article)
    assert Elements(html).count("script") == Elements(plain).count("script")
    assert html.count("{{ 7 * 7 }}") >= 16


def test_a_hostile_chart_title_stays_text(theme: Theme, charts: dict[str, ChartView]) -> None:
    for chart in charts.values():
        html = theme.render_chart(replace(chart, title=HOSTILE, name=HOSTILE))
        assert Elements(html).count("script") == 0


def test_a_chart_is_numbered_and_named(theme: Theme, charts: dict[str, ChartView]) -> None:
    html = theme.render_chart(charts["engraved"])
    assert '<figure class="chart chart-notation" id="example-1">' in html
    assert '<span class="chart-number">Example 1</span>' in html
    assert '<span class="chart-title"><bdi>Opening figure</bdi></span>' in html
    assert 'href="watch/index.html#t=14"' in html


@pytest.mark.parametrize("piece", ["engraved", "progression", "plan"])
def test_every_chart_is_told_in_words(
    theme: Theme, charts: dict[str, ChartView], piece: str
) -> None:
    html = theme.render_chart(charts[piece])
    assert "<dt>Bar 1</dt>\n<dd>E♭sus2 throughout. Voice: F5, a ninth.</dd>" in html


def test_a_chart_without_a_drawing_shows_its_faults(
    theme: Theme, charts: dict[str, ChartView]
) -> None:
    html = theme.render_chart(charts["fault"])
    assert "no chord is written &#34;&lt;i&gt;H&lt;/i&gt;&#34;" in html
    assert 'id="example-4"' in html


def test_both_widths_of_an_engraving_are_there(theme: Theme, charts: dict[str, ChartView]) -> None:
    html = theme.render_chart(charts["engraved"])
    assert html.index('id="wide-note"') < html.index('id="narrow-note"')
    assert html.count("--natural-width: 60rem; --rise: 0.125") == 2


def test_an_engraving_may_come_without_a_legend(
    theme: Theme, charts: dict[str, ChartView]
) -> None:
    drawing = charts["engraved"].drawing
    assert drawing is not None
    plain = replace(drawing, content=NotationDrawing(drawing.content.wide, "", ()))
    html = theme.render_chart(replace(charts["engraved"], drawing=plain))
    assert 'class="legend"' not in html
    assert "drawing-narrow" not in html


def test_a_grid_and_a_contour_stand_under_notation_where_asked_for(
    theme: Theme, charts: dict[str, ChartView]
) -> None:
    html = theme.render_chart(charts["engraved"])
    assert '<th scope="row">hi-hat</th><td>x</td><td>o</td>' in html
    assert "Contour of the voice: it rises." in html


def test_a_progression_shows_bars_chords_and_numerals(
    theme: Theme, charts: dict[str, ChartView]
) -> None:
    text = _words(theme.render_chart(charts["progression"]))
    assert "Repeat from here. Bar 1 Verse 4/4 E♭m7♭5/D♭ ii∅7 Bar 2 N.C." in text
    assert "Repeat to here. Ending 1. Bar 3 (E♭) A♭ IV up a fourth" in text


def test_the_plan_has_a_table_with_its_links(theme: Theme, charts: dict[str, ChartView]) -> None:
    html = theme.render_chart(charts["plan"])
    assert '<th scope="row"><a href="#verse"><bdi>Verse 1</bdi></a>' in html
    assert '<a href="#example-2">Example 2</a>' in html
    assert "A Verse 1 half time 16 0:20 40 s Example 2" in _words(html)


def test_the_plan_stands_near_the_top_and_leads_to_its_chart(pages: dict[str, str]) -> None:
    html = pages["article"]
    opening = html.index('id="opening_plan-note"')
    assert html.index("<h1>") < opening < html.index('class="prose')
    assert '<a class="chart-number" href="#example-3">Example 3</a>' in html


def test_sections_and_moments_are_listed(pages: dict[str, str]) -> None:
    words = _words(pages["article"])
    assert "Listen for 0:14 The voice enters 1:00 First chorus" in words
    assert "In these notes The verse The song A Verse 1" in words


def test_the_index_has_the_songs_form_with_its_times(pages: dict[str, str]) -> None:
    html = pages["article"]
    assert '<li style="--length: 12.5" data-start="20" data-end="60.5">' in html
    assert '<tr data-start="20" data-end="60.5">' in html
    assert "In these notes" not in pages["bare article"]


def test_the_caution_about_rights_stands_on_every_article(pages: dict[str, str]) -> None:
    for name in ("article", "bare article"):
        assert "a licensed adviser decides" in pages[name]


def test_the_archive_is_filed_by_year_newest_first(theme: Theme, page: PageView) -> None:
    entries = tuple(
        ArchiveEntry(f"{number}.html", _dated(number), 1) for number in (3, 1, 200, 2, 299)
    )
    html = theme.render_archive(ArchiveView(page.site, "All", entries))
    assert re.findall(r'<h3><a href="(\d+)\.html">', html) == ["299", "200", "3", "2", "1"]
    assert re.findall(r"<h2[^>]*>(\d+)</h2>", html) == ["2026", "2000"]
    assert 'aria-label="Years"' not in html


def test_a_long_archive_has_a_way_to_each_year(theme: Theme, page: PageView) -> None:
    entries = tuple(ArchiveEntry(f"{number}.html", _dated(number), 1) for number in range(48))
    years = (ValueLink("2026", "archive/published/2026/index.html", 250),)
    view = ArchiveView(page.site, "All", entries, total=300, years=years)
    html = theme.render_archive(view)
    assert html.count('<li class="record">') == 48
    assert "All 300 write-ups by year" in html
    assert '<a href="archive/published/2026/index.html">2026</a>' in html
    assert "by year" not in theme.render_archive(replace(view, total=48))


def test_a_write_up_in_the_archive_has_its_figures_and_its_picture(
    theme: Theme, page: PageView
) -> None:
    facts = (("Key", "C♯ minor"), ("Tempo", "104 bpm"))
    entry = ArchiveEntry("a/index.html", _dated(1), 1, facts=facts, picture="a/incipit.svg")
    html = theme.render_archive(ArchiveView(page.site, "All", (entry,)))
    assert '<dt class="unseen">Key</dt><dd><bdi>C♯ minor</bdi></dd>' in html
    assert "104 bpm" in html
    assert re.search(r'<img [^>]*src="a/incipit.svg" alt="" width="192" height="112"', html)
    plain = theme.render_archive(ArchiveView(page.site, "All", (replace(entry, picture=""),)))
    assert "<img" not in plain


def test_key_tuning_and_topics_lead_into_the_archive(theme: Theme, article: ArticleView) -> None:
    song = replace(article.front.song, key=Key.read("C# minor"), tuning="drop C♯, capo 2")
    front = replace(article.front, song=song, topics=("bass lines", "6/8"))
    html = re.sub("</?bdi>", "", theme.render_article(replace(article, front=front)))
    assert '<a href="../../archive/key/c-sharp-minor/index.html">C♯ minor</a>' in html
    assert '<a href="../../archive/tuning/drop-c-sharp/index.html">drop C♯</a>, ' in html
    assert '<a href="../../archive/tuning/capo-2/index.html">capo 2</a>' in html
    assert '<a href="../../archive/topic/bass-lines/index.html">bass lines</a>' in html
    assert '<a href="../../archive/topic/6-8_d2505d3b/index.html">6/8</a>' in html


def _dated(number: int) -> FrontMatter:
    day = (
        date(2000, 1, 1 + number) if number < 9 else date(2026, 1 + number // 28, 1 + number % 28)
    )
    return FrontMatter(title=f"No. {number}", published=day, song=Song(artist="The Harbour Lamps"))


def test_assets_are_styles_fonts_and_the_notation_font(theme: Theme) -> None:
    files = theme.assets(b"wOF2 notation")
    assert files[NOTATION_FONT] == b"wOF2 notation"
    assert files[theme.stylesheet].decode().endswith(".notation{fill:currentColor}")
    assert "fonts/LICENCE.txt" in files
    assert NOTATION_FONT not in theme.assets()


def test_every_font_of_the_styles_is_published(theme: Theme) -> None:
    files = theme.assets(b"wOF2 notation")
    css = files[theme.stylesheet].decode()
    asked = re.findall(r'url\("?\.\./([^")]+)"?\)', css)
    assert asked == [NOTATION_FONT]
    assert set(asked) <= files.keys()
    assert f'font-family:"{FAMILY}"' in css


def test_the_signs_of_music_in_text_come_with_the_styles(theme: Theme) -> None:
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - heavy, and one test needs it

    css = theme.assets()[theme.stylesheet].decode()
    packed = re.findall(r"data:font/woff2;base64,([^\")]+)", css)
    assert len(packed) == 1
    font = TTFont(io.BytesIO(base64.b64decode(packed[0])))
    assert font.getBestCmap().keys() == {ord(sign) for sign in "♭♮♯"}
    # The x-height that all faces are brought to is the one these signs were drawn for.
    adjusted = re.search(r"font-size-adjust:([\d.]+)", css)
    assert adjusted is not None
    named = font["OS/2"].sxHeight / font["head"].unitsPerEm
    assert float(adjusted[1]) == pytest.approx(named, abs=0.001)


def test_the_notation_fonts_licence_names_it_and_its_makers(theme: Theme) -> None:
    licence = theme.assets()["fonts/LICENCE.txt"].decode()
    assert FAMILY in licence
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence


def test_styles_travel_without_comments_and_say_the_same(tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    for name in TEMPLATES:
        (tmp_path / "pages" / f"{name}.html").write_text("")
    (tmp_path / "styles").mkdir()
    style = '/* One. */\n\na,\nb {\n  grid-template:\n    "x  y" 1fr\n    / 2fr; /* Two. */\n}\n'
    (tmp_path / "styles" / "10-a.css").write_text(style)
    theme = load_theme(tmp_path)
    assert theme.assets()[theme.stylesheet] == b'a,b{grid-template:"x  y" 1fr / 2fr}'


def test_the_stylesheet_is_named_after_what_it_says() -> None:
    plain, other = load_theme(LINER), load_theme(LINER, ".notation {}")
    assert plain.stylesheet == load_theme(LINER).stylesheet
    assert plain.stylesheet != other.stylesheet


def test_styles_ask_no_other_host(theme: Theme) -> None:
    css = theme.assets()[theme.stylesheet].decode()
    assert "//" not in re.sub(r"/\*.*?\*/", "", css, flags=re.DOTALL)
    assert "@import" not in css


def test_a_folder_without_templates_is_no_theme(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError, match=r"has no pages/article\.html"):
        load_theme(tmp_path)


def _words(html: str) -> str:
    """Return what is read of some HTML, without its tags, spaces made single."""
    tree = html5lib.parseFragment(html, treebuilder="etree")
    return re.sub(r"\s+", " ", "".join(tree.itertext()))


@pytest.mark.parametrize("name", [one.name for one in fields(ArticleView)])
def test_a_write_up_may_have_or_lack_anything(
    theme: Theme, article: ArticleView, bare_article: ArticleView, name: str
) -> None:
    lacking = replace(article, **{name: getattr(bare_article, name)})
    having = replace(bare_article, **{name: getattr(article, name)})

    assert "<h1>" in theme.render_article(lacking)
    assert "<h1>" in theme.render_article(having)
