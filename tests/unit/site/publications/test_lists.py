"""The lists that a site publishes for search engines, hosts, readers and other programs."""

import json
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from lxml import etree
from unit.site.publications.filing import ALL, COAT, SETTINGS, TIDE

from sitegen.site.publications.archive_record import make_archive
from sitegen.site.publications.corrections import corrections_of
from sitegen.site.publications.gathering import make_publications
from sitegen.site.publications.people import people_of
from sitegen.site.publications.redirects import file_at, find_moves, make_redirects
from sitegen.site.publications.sitemap import make_robots, make_sitemap
from sitegen.site.settings import Settings

SITEMAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
SCHEMA = Path(__file__).parents[3] / "reference" / "archive_schema.json"


def test_the_sitemap_has_every_page_with_the_day_it_changed() -> None:
    top = etree.fromstring(make_sitemap(SETTINGS, ALL, ["people/"]))
    assert top.tag == f"{SITEMAP}urlset"
    days = {page[0].text: page.findtext(f"{SITEMAP}lastmod") for page in top}
    base = "https://side.example/music/"
    assert days == {
        base: None,
        f"{base}breakdowns/low-tide/": "2026-06-01",
        f"{base}breakdowns/the-coat/": "2026-07-01",
        f"{base}breakdowns/undated/": None,
        f"{base}people/": None,
    }
    assert make_sitemap(Settings("Side Two"), ALL, []) == b""


def test_robots_are_told_of_the_sitemap() -> None:
    assert make_robots(SETTINGS).decode().splitlines() == [
        "User-agent: *",
        "Allow: /",
        "Sitemap: https://side.example/music/sitemap.xml",
    ]
    assert b"Sitemap" not in make_robots(Settings("Side Two"))


@pytest.mark.parametrize(
    ("written", "file"),
    [
        ("/notes/low-tide/", "notes/low-tide/index.html"),
        ("notes/low-tide", "notes/low-tide/index.html"),
        ("tide.html", "tide.html"),
        ("https://old.example/a/tide.htm", "a/tide.htm"),
        ("https://old.example/ebbe%20und%20flut/", "ebbe und flut/index.html"),
        ("https://old.example/", ""),
    ],
)
def test_an_old_address_stands_for_the_file_that_a_server_shows(written: str, file: str) -> None:
    assert file_at(written) == file


def test_old_addresses_lead_on() -> None:
    files = make_redirects(SETTINGS, find_moves(ALL), ())
    page = files["notes/low-tide/index.html"].decode()
    assert 'content="0; url=../../breakdowns/low-tide/index.html"' in page
    assert '<link rel="canonical" href="https://side.example/music/breakdowns/low-tide/">' in page
    assert "Low Tide: a riff &amp; its &lt;shadow&gt;" in page
    assert "url=breakdowns/low-tide/index.html" in files["tide.html"].decode()
    assert files["redirects.txt"].decode().splitlines() == [
        "/music/notes/low-tide/ /music/breakdowns/low-tide/ 301",
        "/music/tide.html /music/breakdowns/low-tide/ 301",
    ]


def test_what_stands_at_an_old_address_stays() -> None:
    files = make_redirects(SETTINGS, find_moves(ALL), {"tide.html"})
    assert set(files) == {"notes/low-tide/index.html", "redirects.txt"}


def test_an_old_address_at_the_top_of_a_site_has_no_page() -> None:
    front = replace(COAT.front, moved_from=("https://old.example/",))
    assert make_redirects(SETTINGS, find_moves([replace(COAT, front=front)]), ()) == {}


def test_people_are_found_by_what_they_did() -> None:
    letters = people_of([TIDE, COAT])
    assert [letter.letter for letter in letters] == ["A", "H", "I", "T"]
    (ada,) = letters[0].people
    told = [(part.role, [link.text for link in part.write_ups]) for part in ada.parts]
    tide = "Low Tide: a riff & its <shadow>"
    assert told == [
        ("wrote", [tide, "The Coat"]),
        ("played voice and guitar", [tide]),
        ("source", [tide]),
    ]
    assert ada.parts[0].write_ups[1].href == "../breakdowns/the-coat/index.html"


def test_corrections_stand_newest_first() -> None:
    found = corrections_of(ALL)
    assert [one.what for one in found] == ["Seven bars, not eight.", "The bass is C♯."]
    assert found[1].write_up.href == "../breakdowns/low-tide/index.html#corrections_head"


def test_the_archive_keeps_to_its_schema() -> None:
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    record = json.loads(make_archive(SETTINGS, ALL))
    jsonschema.validate(record, schema)
    assert [one["path"] for one in record["write_ups"]] == [
        "breakdowns/the-coat/",
        "breakdowns/low-tide/",
        "breakdowns/undated/",
    ]
    tide = record["write_ups"][1]
    assert tide["charts"][0]["bars"] == 4
    assert tide["sections"] == [{"name": "Verse", "letter": "A", "bars": 16, "start": 10.5}]
    record["write_ups"][1]["charts"][0]["bars"] = "four"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(record, schema)


def test_all_of_them_are_published_together_and_drafts_are_left_out() -> None:
    files = make_publications(SETTINGS, ALL, (), {"tide.html"}, lambda _: "")
    assert set(files) == {
        "archive.json",
        "feed.xml",
        "notes/low-tide/index.html",
        "redirects.txt",
        "robots.txt",
        "sitemap.xml",
    }
    assert not any(b"breakdowns/draft" in data for data in files.values())
