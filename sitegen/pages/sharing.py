"""What a page says of itself in a browser's tab, in search results and in link previews."""

from sitegen.article.front import Song
from sitegen.pages.directions import isolated
from sitegen.pages.views import ArticleView


def tab_title(article: ArticleView) -> str:
    """Return the title for a tab and for search results; it names the song in any case.

    "Low Tide: two chords" stays; "The third is in the throat" becomes "The third is in the
    throat (Low Tide)".
    """
    title, song = article.front.title, article.front.song.title
    return isolated(title) if _holds(title, song) else f"{isolated(title)} ({isolated(song)})"


def description(article: ArticleView) -> str:
    """Return what stands below the title in search results: song, artist, and the summary.

    Without a summary the site's tagline has to do.
    """
    front = article.front
    words = front.summary or article.site.tagline
    told = f"{front.title} {words}"
    named = _holds(told, front.song.title) and _holds(words, front.song.artist)
    line = "" if named else song_line(front.song)
    return " ".join(filter(None, (line and _ended(line), words)))


def song_line(song: Song) -> str:
    """Return "Low Tide by The Harbour Lamps", or the one of both that is known."""
    return " by ".join(isolated(name) for name in (song.title, song.artist) if name)


def open_graph_locale(language: str) -> str:
    """Return a language tag as Open Graph has it, "pt_BR"; "" for a tag without a region.

    The protocol (ogp.me) knows a language only together with a territory, and takes en_US where
    nothing is said.
    """
    parts = language.split("-")
    regions = [part for part in parts[1:] if len(part) == 2 and part.isalpha()]  # noqa: PLR2004
    return f"{parts[0].lower()}_{regions[0].upper()}" if regions else ""


def _holds(text: str, part: str) -> bool:
    return part.casefold() in text.casefold()


def _ended(text: str) -> str:
    return text if text.endswith((".", "!", "?", "…")) else f"{text}."
