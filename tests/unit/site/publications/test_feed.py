"""The feed is what RFC 4287 asks for and what another reader of feeds reads."""

from dataclasses import replace

import feedparser
from lxml import etree
from unit.site.publications.filing import ALL, SETTINGS, UNDATED

from sitegen.site.listing import Listed
from sitegen.site.publications.feed import MOST_ENTRIES, make_feed

ATOM = "{http://www.w3.org/2005/Atom}"
WORDS = '<div><p>It <a href="../the-coat/index.html#x">falls</a>.</p><img src="a.png"></div>'


def words(_: Listed) -> str:
    return WORDS


def test_another_reader_finds_the_write_ups() -> None:
    read = feedparser.parse(make_feed(SETTINGS, ALL, words))
    assert not read.bozo
    assert read.version == "atom10"
    assert read.feed.title == "Side Two"
    assert read.feed.updated == "2026-07-01T00:00:00Z"
    assert [entry.title for entry in read.entries] == [
        "The Coat",
        "Low Tide: a riff & its <shadow>",
    ]
    tide = read.entries[1]
    assert tide.link == tide.id == "https://side.example/music/breakdowns/low-tide/"
    assert (tide.published, tide.updated) == ("2026-05-04T00:00:00Z", "2026-06-01T00:00:00Z")
    assert tide.summary == "What the tide leaves."
    assert [tag.term for tag in tide.tags] == ["pedal notes"]


def test_addresses_in_the_words_are_whole() -> None:
    (entry, _) = feedparser.parse(make_feed(SETTINGS, ALL, words)).entries
    (content,) = entry.content
    base = "https://side.example/music/breakdowns/"
    assert f'href="{base}the-coat/index.html#x"' in content.value
    assert f'src="{base}the-coat/a.png"' in content.value


def test_what_the_standard_requires_is_there() -> None:
    # RFC 4287, 4.1.1 and 4.1.2: id, title and updated once in the feed and in each entry, an
    # author of the feed, a link "self"; an entry without content has a link "alternate".
    settings = replace(SETTINGS, author="", feed="summary")
    feed = etree.fromstring(make_feed(settings, ALL, words))
    for holder in (feed, *feed.iter(f"{ATOM}entry")):
        for name in ("id", "title", "updated"):
            assert len(holder.findall(f"{ATOM}{name}")) == 1
        assert any(link.get("rel") == "alternate" for link in holder.iterfind(f"{ATOM}link"))
        assert holder.find(f"{ATOM}content") is None
    assert feed.findtext(f"{ATOM}author/{ATOM}name") == "Side Two"
    assert any(link.get("rel") == "self" for link in feed.iterfind(f"{ATOM}link"))


def test_only_the_newest_are_told() -> None:
    many = [ALL[1]] * (MOST_ENTRIES + 5)
    assert len(feedparser.parse(make_feed(SETTINGS, many, words)).entries) == MOST_ENTRIES


def test_without_an_address_or_a_day_there_is_none() -> None:
    assert make_feed(replace(SETTINGS, address=""), ALL, words) == b""
    assert make_feed(SETTINGS, (UNDATED,), words) == b""


def test_the_same_write_ups_give_the_same_feed() -> None:
    assert make_feed(SETTINGS, ALL, words) == make_feed(SETTINGS, ALL, words)
