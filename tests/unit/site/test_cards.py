"""The card of a write-up: a file beside its page, and what the page's head says of it."""

from collections.abc import Callable
from dataclasses import fields, replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from sitegen.article.front import FrontMatter, Song
from sitegen.figures.card import Palette
from sitegen.kinds import KINDS
from sitegen.kinds.kind import ChartKind, Drawing
from sitegen.kinds.notation import NOTATION
from sitegen.pages.theme import load_theme
from sitegen.pages.views import ChartView, SiteView
from sitegen.site.addresses import site_view
from sitegen.site.build import build_site
from sitegen.site.cards import make_card
from sitegen.site.order import Order
from sitegen.site.settings import Settings
from sitegen.site.theme_folder import find_theme

WriteArticle = Callable[..., Path]
SETTINGS = Settings(title="Side Two", address="https://side.example/two/")
ADDRESS = "breakdowns/low-tide/"
SITE = site_view(SETTINGS, ADDRESS, {})
NO_ADDRESS = site_view(Settings(title="Side Two"), ADDRESS, {})
FRONT = FrontMatter(title="Two chords", song=Song("Low Tide", "The Harbour Lamps"))
SHEET = (
    '<svg viewBox="-450 -100 9000 3000" stroke="currentColor" stroke-width="18">'
    '<g class="measure"><path d="M0 1000H8000"/></g></svg>'
)


def engraved(name: str, sheet: str = SHEET) -> ChartView:
    drawing = Drawing("engraved", SimpleNamespace(wide=sheet), "One bar.", ())
    return ChartView(name, f"chart-{name}", f"Example {name}", "notation", "", drawing)


PLAN = ChartView("p", "chart-p", "Plan", "form", "", Drawing("plan", None, "A plan.", ()))


def card_of(site: SiteView, *charts: ChartView, taken: tuple[str, ...] = ()) -> tuple[str, bytes]:
    card = make_card(site, FRONT, charts, {}, taken)
    return card.name, card.data


def test_the_page_is_told_the_whole_address() -> None:
    card = make_card(SITE, FRONT, (PLAN, engraved("1")), {}, ())
    assert card.view.address == "https://side.example/two/breakdowns/low-tide/card.png"
    assert (card.view.width, card.view.height) == (1200, 630)
    assert card.view.alt == (
        "Two chords. Low Tide by The Harbour Lamps. With the first bars of Example 1 in notation."
    )


def test_a_site_without_an_address_has_none_for_its_cards() -> None:
    assert make_card(NO_ADDRESS, FRONT, (), {}, ()).view.address == ""


def test_the_first_engraved_chart_is_shown() -> None:
    other = engraved("2", SHEET.replace("H8000", "H4000"))
    first = card_of(SITE, PLAN, engraved("1"), other)
    assert first == card_of(SITE, engraved("1"))
    assert first != card_of(SITE, other)


def test_without_notation_the_card_has_words_alone() -> None:
    card = make_card(SITE, FRONT, (PLAN, replace(PLAN, drawing=None)), {}, ())
    assert card.view.alt == "Two chords. Low Tide by The Harbour Lamps."
    assert card.data.startswith(b"\x89PNG")


def test_the_colours_are_the_themes() -> None:
    plain = make_card(SITE, FRONT, (), {}, ()).data
    dark = make_card(SITE, FRONT, (), {"paper": "#000000", "plan-1": "#ff0000"}, ()).data
    assert plain != dark


@pytest.mark.parametrize(
    "style",
    [
        ":root { --ink: #123456; --paper: #fedcba }",
        ":root { --ink: light-dark(#123456, #ffffff); --paper: light-dark( #fedcba, #000000) }",
        ":root { --ink: #123456; --paper: #fedcba } @media print { :root { --ink: #000000 } }",
    ],
)
def test_a_themes_colours_are_those_of_a_light_page(theme: Path, style: str) -> None:
    (theme / "styles" / "0.css").write_text(style, encoding="utf-8")
    assert load_theme(theme).colours == {"ink": "#123456", "paper": "#fedcba"}


def test_the_liner_theme_names_every_colour_of_a_card() -> None:
    folder = find_theme("liner", Path())
    assert folder is not None
    assert {field.name for field in fields(Palette)} <= load_theme(folder).colours.keys()


def test_a_picture_of_the_author_keeps_its_name() -> None:
    assert card_of(SITE)[0] == "card.png"
    assert card_of(SITE, taken=("Card.png", "hand.jpg"))[0] == "link-card.png"


@pytest.mark.parametrize("address", ["", "https://side.example/two/"])
def test_a_build_writes_it_beside_the_page(
    content: Path, write_article: WriteArticle, address: str
) -> None:
    settings = f'title = "Side Two"\naddress = "{address}"\n'
    (content / "site.toml").write_text(settings, encoding="utf-8")
    more = "published: 2026-05-04\nrights:\n  holder: The Gantry\nsources:\n  - who: The drummer\n"
    write_article(
        "low-tide", f"```notation\n{NOTATION.example}```\n", status="published", more=more
    )
    report = build_site(Order(content, Path("published"), KINDS), lambda *_: None)
    assert (report.bugs, report.diagnostics) == ((), ())
    page = Path("published/breakdowns/low-tide/index.html").read_text(encoding="utf-8")
    head, _, body = page.partition("<body>")
    assert Path("published/breakdowns/low-tide/card.png").read_bytes().startswith(b"\x89PNG")
    assert (f"{address}breakdowns/low-tide/card.png" in head) == bool(address)
    assert "card.png" not in body


def test_two_builds_make_the_same_card(
    content: Path, write_article: WriteArticle, theme: Path, claps: ChartKind
) -> None:
    write_article("low-tide", "Listen.\n\n```claps\nid: beat\n\nx x\n```\n")
    cards = []
    for out in ("first", "second"):
        build_site(Order(content, Path(out), (claps,), str(theme), drafts=True), lambda *_: None)
        cards.append(Path(f"{out}/breakdowns/low-tide/card.png").read_bytes())
    assert cards[0] == cards[1]


def test_a_free_page_has_none(content: Path, theme: Path, claps: ChartKind) -> None:
    (content / "pages").mkdir()
    (content / "pages" / "about.md").write_text("---\ntitle: Us\n---\n\nWe.\n", encoding="utf-8")
    build_site(Order(content, Path("published"), (claps,), str(theme)), lambda *_: None)
    assert [path.name for path in Path("published/about").iterdir()] == ["index.html"]
