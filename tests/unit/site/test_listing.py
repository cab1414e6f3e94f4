"""Write-ups stand newest first, and the menu is as the settings or the pages say."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

import pytest

from sitegen.article import FrontMatter
from sitegen.site.content import ContentFile
from sitegen.site.listing import Listed, menu_of, neighbours, ordered_listing
from sitegen.site.settings import Settings


def article(slug: str, day: int | None, title: str = "") -> Listed:
    published = None if day is None else date(2026, 5, day)
    front = FrontMatter(title=title or slug, published=published)
    return Listed(ContentFile(slug, Path(slug)), front, "", 0)


def page(slug: str, menu: str = "") -> Listed:
    front = FrontMatter(title=slug.title(), menu=menu)
    return Listed(ContentFile(slug, Path(slug), is_page=True), front, "", 0)


def slugs(listing: tuple[Listed, ...]) -> list[str]:
    return [one.file.slug for one in listing]


def test_the_newest_stands_first_and_what_has_no_date_before_all() -> None:
    listing = ordered_listing([article("a", 1), article("b", None), article("c", 3)])

    assert slugs(listing) == ["b", "c", "a"]


def test_write_ups_of_one_day_stand_by_title() -> None:
    listing = ordered_listing([article("z", 1, "almost"), article("a", 1, "Zero")])

    assert slugs(listing) == ["z", "a"]


def test_neighbours_are_the_one_before_and_the_one_after_in_time() -> None:
    listing = ordered_listing([article("old", 1), article("new", 2)])

    earlier, later = neighbours(listing, 0)
    assert earlier is not None
    assert (earlier.text, earlier.href) == ("old", "../../breakdowns/old/index.html")
    assert later is None
    assert neighbours(listing, 1)[1] is not None


@pytest.mark.parametrize(
    ("menu", "expected"),
    [
        (None, {"about/": "Us"}),
        (("reading", "about"), {"reading/": "Reading", "about/": "Us"}),
        (("gone",), {}),
        ((), {}),
    ],
)
def test_the_menu(menu: tuple[str, ...] | None, expected: Mapping[str, str]) -> None:
    pages = [page("about", "Us"), page("reading")]

    found = menu_of(pages, Settings(title="x", menu=menu))

    assert list(found.items()) == list(expected.items())
