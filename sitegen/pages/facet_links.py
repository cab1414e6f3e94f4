"""Links from what a write-up says of its song to the archive's pages of the same."""

from collections.abc import Iterator

from sitegen.finding.facet_addresses import address_of
from sitegen.finding.facets import BY_ID, tuning_words
from sitegen.pages.views import Link

_FACETS = {"Key": "key", "Meter": "meter", "Tuning": "tuning", "Topics": "topic"}


def facet_links(text: str, name: str) -> tuple[Link, ...]:
    """Return a text in the parts that are filed, each with its page from the top of the site.

    `name` says what the text is, "Key" or "Tuning"; `href` is "" for what has no page.
    """
    return tuple(_links(text, name))


def _links(text: str, name: str) -> Iterator[Link]:
    facet = BY_ID.get(_FACETS.get(name, ""))
    if facet is None:
        yield Link(text, "")
        return
    for part in text.split(",") if facet.id == "tuning" else (text,):
        words = tuning_words(part) if facet.id == "tuning" else (part,)
        address = address_of(words[0], is_own=facet.is_own) if words and words[0].strip() else ""
        yield Link(part.strip(), f"archive/{facet.id}/{address}/index.html" if address else "")
