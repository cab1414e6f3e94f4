"""Links work wherever the site is put, and the page for lost readers works at any depth."""

import pytest

from sitegen.site.addresses import href, missing_view, site_view
from sitegen.site.settings import Settings

MENU = {"about/": "About"}


@pytest.mark.parametrize(
    ("address", "root"), [("", ""), ("about/", "../"), ("breakdowns/low-tide/", "../../")]
)
def test_links_are_relative_to_their_page(address: str, root: str) -> None:
    view = site_view(Settings(title="Side Two"), address, MENU)

    assert view.root == root
    assert [link.href for link in view.menu] == [f"{root}about/index.html"]
    assert view.address == ""


@pytest.mark.parametrize("site", ["https://example.org/music", "https://example.org/music/"])
def test_a_page_knows_its_whole_address_where_the_site_has_one(site: str) -> None:
    settings = Settings(title="Side Two", address=site)

    assert site_view(settings, "", MENU).address == "https://example.org/music/"
    assert site_view(settings, "für/", MENU).address == "https://example.org/music/f%C3%BCr/"


@pytest.mark.parametrize(
    ("site", "root"),
    [("", "/"), ("https://example.org", "/"), ("https://example.org/music/", "/music/")],
)
def test_the_page_for_lost_readers_links_from_the_servers_top(site: str, root: str) -> None:
    view = missing_view(Settings(title="Side Two", address=site), MENU)

    assert view.root == root
    assert [link.href for link in view.menu] == [f"{root}about/index.html"]


def test_letters_beyond_ascii_are_escaped_in_links() -> None:
    assert href("breakdowns/für/") == "breakdowns/f%C3%BCr/index.html"
