"""A write-up told to machines: JSON-LD in the words of schema.org.

Every type and property here is checked against schema.org's own list in
tests/reference/schema_org.json. What would need an address is left out as long as the site has
none, and so is what the front matter does not say.
"""

import json
from collections.abc import Iterable
from urllib.parse import urljoin, urlsplit

from sitegen.article.embeds import fill_seconds
from sitegen.article.front import Correction, Song
from sitegen.pages.sharing import description
from sitegen.pages.views import ArticleView, RecordingView

Thing = dict[str, object]
# JSON inside of HTML: no tag may open or close there, and U+2028 and U+2029 end a line in scripts.
_ESCAPES = {ord(char): f"\\u{ord(char):04x}" for char in "<>&\u2028\u2029"}


def linked_data(article: ArticleView) -> str:
    """Return the JSON-LD of a write-up, ready to stand in a `script` element."""
    things = [found for found in (_article(article), _way(article)) if found]
    whole = {"@context": "https://schema.org", "@graph": things}
    return json.dumps(whole, ensure_ascii=False, separators=(",", ":")).translate(_ESCAPES)


def _article(article: ArticleView) -> Thing:
    front, site = article.front, article.site
    medium = _medium(article)
    name = "audio" if medium.get("@type") == "AudioObject" else "video"
    return _thing(
        "Article",
        headline=front.title,
        description=description(article),
        author=_named("Person", site.author),
        datePublished=front.published and front.published.isoformat(),
        dateModified=front.updated and front.updated.isoformat(),
        inLanguage=site.language,
        keywords=list(front.topics),
        mainEntityOfPage=site.address,
        image=article.card.address if article.card else "",
        isPartOf=_thing("WebSite", name=site.title, url=_absolute(article, site.root)),
        about=_composition(front.song),
        correction=[_correction(one) for one in front.corrections],
        **{name: medium},
    )


def _composition(song: Song) -> Thing:
    """Return the song as it was written, with the recording that the write-up speaks of.

    schema.org calls whoever wrote a composition its composer; who of the writers wrote the words
    is not known.
    """
    return _thing(
        "MusicComposition",
        name=song.title,
        composer=_people(song.writers),
        musicalKey=str(song.key or ""),
        recordedAs=_recording(song),
    )


def _recording(song: Song) -> Thing:
    made = _thing(
        "MusicRecording",
        byArtist=_named("MusicGroup", song.artist),
        inAlbum=_named("MusicAlbum", song.album),
        producer=_people(song.producers),
        locationCreated=_named("Place", song.studio),
        datePublished=song.year and f"{song.year:04}",
        duration=_duration(song.length),
    )
    return {**made, "name": song.title} if made and song.title else made


def _medium(article: ArticleView) -> Thing:
    """Return the recording as the page plays or links it; nothing where it has no address."""
    front, player = article.front, article.recording
    page = _absolute(article, front.video.page)
    file, frame = _player_addresses(article, player)
    if not (page or file or frame):
        return {}
    is_sound = player is not None and player.kind == "audio"
    return _thing(
        "AudioObject" if is_sound else "VideoObject",
        name=front.title,
        description=description(article),
        url=page,
        contentUrl=file,
        embedUrl=frame,
        thumbnailUrl=article.card.address if article.card else "",
        uploadDate=front.video.uploaded and front.video.uploaded.isoformat(),
        duration=_duration(front.video.length),
        hasPart=_clips(article),
    )


def _player_addresses(article: ArticleView, player: RecordingView | None) -> tuple[str, str]:
    if player is None:
        return "", ""
    if player.kind == "frame":
        return "", fill_seconds(player.address, 0)
    return _absolute(article, player.address), ""


def _clips(article: ArticleView) -> list[Thing]:
    """Return the moments as parts, each until the next one; the last until the recording ends."""
    hrefs = {link.seconds: _absolute(article, link.href) for link in article.moments}
    found = (moment for moment in article.front.moments if moment.seconds in hrefs)
    starts = sorted((moment.seconds, moment.name) for moment in found)
    ends = [*(start for start, _ in starts[1:]), article.front.video.length]
    return [
        _thing("Clip", name=name, startOffset=start, endOffset=_end(start, end), url=hrefs[start])
        for (start, name), end in zip(starts, ends, strict=False)
    ]


def _end(start: int, end: int | None) -> int | None:
    return end if end is not None and end > start else None


def _way(article: ArticleView) -> Thing:
    """Return the way from the site's front page; its steps are nothing without addresses."""
    site = article.site
    if not site.address:
        return {}
    steps = ((site.title, _absolute(article, site.root)), (article.front.title, site.address))
    return _thing(
        "BreadcrumbList",
        itemListElement=[
            _thing("ListItem", position=place, name=name, item=address)
            for place, (name, address) in enumerate(steps, start=1)
        ],
    )


def _correction(correction: Correction) -> Thing:
    day = correction.date.isoformat()
    return _thing("CorrectionComment", text=correction.what, datePublished=day)


def _absolute(article: ArticleView, href: str) -> str:
    """Return a link as a whole address, "" where the site has none that it could start from."""
    whole = urljoin(article.site.address, href) if href or article.site.address else ""
    return whole if urlsplit(whole).scheme in ("http", "https") else ""


def _people(names: Iterable[str]) -> list[Thing]:
    return [_named("Person", name) for name in names]


def _named(kind: str, name: str) -> Thing:
    return _thing(kind, name=name)


def _duration(seconds: int | None) -> str:
    """Return a length as ISO 8601 has it: PT4M12S."""
    return "" if seconds is None else f"PT{seconds // 60}M{seconds % 60}S"


def _thing(kind: str, **properties: object) -> Thing:
    """Return a thing with the properties that say something; {} where none does."""
    told = {name: value for name, value in properties.items() if value not in (None, "", [], {})}
    return {"@type": kind, **told} if told else {}
