"""The JSON-LD of a write-up: words of schema.org, nothing invented, nothing that can break."""

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from sitegen.article.front import Correction, FrontMatter, Moment, Song, Video
from sitegen.pages.linked_data import linked_data
from sitegen.pages.theme import Theme
from sitegen.pages.views import ArticleView, CardView, RecordingView, TimeLink

# schema.org's own list of what a type may have, and of what that may hold.
TERMS = json.loads(
    (Path(__file__).parents[2] / "reference" / "schema_org.json").read_text(encoding="utf-8")
)["types"]
ADDRESS = "https://turnaround.example/notes/breakdowns/low-tide/"
CARD = CardView(f"{ADDRESS}card.png", 1200, 630, "The title.")
HOSTILE = "</script><script>alert(1)</script><!--&\u2028\u2029\"\\'♭"


def whole(article: ArticleView, **more: Any) -> ArticleView:  # noqa: ANN401 - fields of a view
    site = replace(article.site, address=ADDRESS)
    return replace(article, site=site, card=CARD, **more)


def things(article: ArticleView) -> dict[str, Any]:
    """Return the top things by their type."""
    data = json.loads(linked_data(article))
    assert data["@context"] == "https://schema.org"
    return {thing["@type"]: thing for thing in data["@graph"]}


def told(article: ArticleView) -> Any:  # noqa: ANN401 - JSON
    return things(article)["Article"]


def kinds_of(name: str) -> set[str]:
    parents = TERMS.get(name, {"is": ()})["is"]
    return {name}.union(*(kinds_of(parent) for parent in parents))


def properties_of(name: str) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for kind in kinds_of(name):
        found |= TERMS[kind]["properties"]
    return found


def faults(thing: dict[str, Any]) -> Iterator[str]:
    """Yield what schema.org does not know of a thing and of all that it holds."""
    kind = thing["@type"]
    if kind not in TERMS:
        yield f"no type {kind}"
        return
    for name, value in thing.items():
        if name == "@type":
            continue
        expected = properties_of(kind).get(name)
        if expected is None:
            yield f"{kind} has no {name}"
            continue
        for one in value if isinstance(value, list) else [value]:
            if not fits(one, expected):
                yield f"{kind}.{name} is no {one!r}"
            if isinstance(one, dict):
                yield from faults(one)


def fits(value: object, expected: list[str]) -> bool:
    if isinstance(value, dict):
        return bool(kinds_of(value["@type"]) & set(expected))
    if isinstance(value, int):
        return bool({"Integer", "Number"} & set(expected))
    text = str(value)
    # A thing can be told by its address alone (JSON-LD 1.1, 3.3).
    is_thing = any(kind in TERMS or kind == "ImageObject" for kind in expected)
    shapes = {
        "Text": r".+",
        "URL": r"https?://\S+",
        "Date": r"\d{4}(-\d\d-\d\d)?",
        "Duration": r"PT\d+M\d+S",
    }
    patterns = [shape for kind, shape in shapes.items() if kind in expected]
    if is_thing:
        patterns.append(r"https?://\S+")
    return any(re.fullmatch(pattern, text, re.DOTALL) for pattern in patterns)


def filmed(article: ArticleView) -> ArticleView:
    video = Video(page="https://films.example/watch/7", length=252, uploaded=date(2026, 3, 1))
    links = tuple(
        TimeLink(moment.name, f"https://films.example/watch/7#t={moment.seconds}", moment.seconds)
        for moment in article.front.moments
    )
    return whole(article, front=replace(article.front, video=video), moments=links)


@pytest.mark.parametrize("case", ["full", "bare", "filmed", "without an address"])
def test_only_schema_orgs_words_are_used(
    article: ArticleView, bare_article: ArticleView, case: str
) -> None:
    views = {
        "full": whole(article),
        "bare": bare_article,
        "filmed": filmed(article),
        "without an address": article,
    }
    found = json.loads(linked_data(views[case]))["@graph"]
    assert found
    assert [wrong for thing in found for wrong in faults(thing)] == []


def test_a_wrong_word_is_seen() -> None:
    thing = {
        "@type": "Article",
        "tempo": "96",
        "datePublished": "4 May",
        "about": {"@type": "Song"},
        "author": {"@type": "Place", "name": "x"},
    }
    assert list(faults(thing)) == [
        "Article has no tempo",
        "Article.datePublished is no '4 May'",
        "Article.about is no {'@type': 'Song'}",
        "no type Song",
        "Article.author is no {'@type': 'Place', 'name': 'x'}",
    ]


def test_the_article_tells_who_wrote_it_and_when(article: ArticleView) -> None:
    found = told(whole(article))
    assert found["headline"] == "The third is in the throat"
    assert found["description"] == "Low Tide by The Harbour Lamps. Two chords without a third."
    assert found["author"] == {"@type": "Person", "name": "Ines Calloway"}
    assert (found["datePublished"], found["dateModified"]) == ("2026-05-04", "2026-06-01")
    assert found["keywords"] == ["suspended chords", "detuned guitar"]
    assert found["mainEntityOfPage"] == ADDRESS
    assert found["image"] == f"{ADDRESS}card.png"


def test_the_song_is_a_composition_with_its_recording(article: ArticleView) -> None:
    song = told(article)["about"]
    assert (song["@type"], song["name"]) == ("MusicComposition", "Low Tide")
    assert song["musicalKey"] == "E♭ minor"
    assert [who["name"] for who in song["composer"]] == ["Dara Quillfeather", "Tom Ostrander"]
    recording = song["recordedAs"]
    assert recording["byArtist"] == {"@type": "MusicGroup", "name": "The Harbour Lamps"}
    assert recording["inAlbum"] == {"@type": "MusicAlbum", "name": "Brackish"}
    assert recording["producer"] == [{"@type": "Person", "name": "Milla Renfrew"}]
    assert recording["locationCreated"]["name"] == "The Old Net Loft"
    assert (recording["datePublished"], recording["duration"]) == ("2011", "PT4M12S")


def test_corrections_are_told_with_their_day(article: ArticleView) -> None:
    assert told(article)["correction"] == [
        {"@type": "CorrectionComment", "text": "Bar 7 had a sixth.", "datePublished": "2026-06-01"}
    ]


def test_what_is_not_known_is_not_told(bare_article: ArticleView) -> None:
    assert things(bare_article) == {
        "Article": {
            "@type": "Article",
            "headline": "Untold",
            "inLanguage": "en",
            "isPartOf": {"@type": "WebSite", "name": "Notes"},
        }
    }


@pytest.mark.parametrize("language", ["en", "de", "pt-BR", "zh-Hant-TW"])
def test_the_language_is_the_sites(article: ArticleView, language: str) -> None:
    site = replace(article.site, language=language)
    assert told(replace(article, site=site))["inLanguage"] == language


def test_without_an_address_of_the_site_there_is_no_address(article: ArticleView) -> None:
    assert article.site.address == ""
    card = replace(CARD, address="")
    text = linked_data(replace(article, card=card))
    assert re.findall(r"https?://[^\"]+", text) == ["https://schema.org"]
    assert "BreadcrumbList" not in text


def test_the_way_leads_from_the_front_page(article: ArticleView) -> None:
    steps = things(whole(article))["BreadcrumbList"]["itemListElement"]
    assert [(step["position"], step["name"], step["item"]) for step in steps] == [
        (1, "The Turnaround", "https://turnaround.example/notes/"),
        (2, "The third is in the throat", ADDRESS),
    ]


def test_moments_are_clips_of_the_video(article: ArticleView) -> None:
    video = told(filmed(article))["video"]
    assert (video["@type"], video["url"]) == ("VideoObject", "https://films.example/watch/7")
    assert (video["duration"], video["thumbnailUrl"]) == ("PT4M12S", f"{ADDRESS}card.png")
    assert video["hasPart"] == [
        {
            "@type": "Clip",
            "name": "The voice enters",
            "startOffset": 14,
            "endOffset": 60,
            "url": "https://films.example/watch/7#t=14",
        },
        {
            "@type": "Clip",
            "name": "First chorus",
            "startOffset": 60,
            "endOffset": 252,
            "url": "https://films.example/watch/7#t=60",
        },
    ]


def test_a_video_tells_since_when_it_is_there_and_nothing_where_that_is_not_known(
    article: ArticleView,
) -> None:
    assert told(filmed(article))["video"]["uploadDate"] == "2026-03-01"
    front = replace(article.front, video=Video(page="https://films.example/watch/7"))
    assert "uploadDate" not in told(whole(article, front=front))["video"]


def test_clips_run_in_order_of_time_and_the_last_is_open(article: ArticleView) -> None:
    moments = (Moment(90, "Later"), Moment(0, "First"), Moment(90, "Too"))
    front = replace(
        article.front, moments=moments, video=Video(page="https://films.example/watch/7")
    )
    links = tuple(TimeLink("", "https://films.example/watch/7", one.seconds) for one in moments)
    clips = told(whole(article, front=front, moments=links))["video"]["hasPart"]
    found = [(one["name"], one["startOffset"], one.get("endOffset")) for one in clips]
    assert found == [("First", 0, 90), ("Later", 90, None), ("Too", 90, None)]


def test_a_file_beside_the_page_is_told_by_its_whole_address(article: ArticleView) -> None:
    front = replace(article.front, video=Video(file="take 1.mp3"), moments=())
    player = RecordingView("audio", "take%201.mp3")
    view = whole(article, front=front, moments=(), recording=player)
    assert told(view)["audio"]["@type"] == "AudioObject"
    assert told(view)["audio"]["contentUrl"] == f"{ADDRESS}take%201.mp3"
    # Where it would stand is not known yet.
    lost = replace(view, site=article.site, card=None)
    assert not {"audio", "video"} & told(lost).keys()


def test_a_frame_is_told_from_its_start(article: ArticleView) -> None:
    player = RecordingView("frame", "https://films.example/embed/7?start={seconds}")
    front = replace(article.front, video=Video(), moments=())
    video = told(whole(article, front=front, moments=(), recording=player))["video"]
    assert video["embedUrl"] == "https://films.example/embed/7?start=0"


class Scripts(HTMLParser):
    """Collects the text of every script, as a browser's parser sees it."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, str]] = []
        self._kind: str | None = None
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note the kind of a script."""
        if tag == "script":
            self._kind = dict(attrs).get("type") or ""
            self.found.append((self._kind, ""))

    def handle_endtag(self, tag: str) -> None:
        """Close a script."""
        if tag == "script":
            self._kind = None

    def handle_data(self, data: str) -> None:
        """Keep what stands in a script."""
        if self._kind is not None:
            kind, before = self.found[-1]
            self.found[-1] = (kind, before + data)


def test_hostile_words_stay_words(theme: Theme, article: ArticleView) -> None:
    words = (HOSTILE,)
    front = FrontMatter(
        title=HOSTILE,
        summary=HOSTILE,
        song=Song(HOSTILE, HOSTILE, 2011, HOSTILE, words, words, studio=HOSTILE),
        corrections=(Correction(date(2026, 6, 1), HOSTILE),),
        topics=words,
    )
    plain = Scripts(theme.render_article(whole(article)))
    hostile = Scripts(theme.render_article(whole(article, front=front, moments=())))
    assert [kind for kind, _ in hostile.found] == [kind for kind, _ in plain.found]
    data = [text for kind, text in hostile.found if kind == "application/ld+json"]
    found = json.loads(data[0])["@graph"][0]
    assert len(data) == 1
    assert found["headline"] == HOSTILE
    assert found["about"]["recordedAs"]["producer"][0]["name"] == HOSTILE
    assert not re.search("[<>&\u2028\u2029]", data[0])
