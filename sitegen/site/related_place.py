"""The place in a write-up's page for what is told once all write-ups are known."""

_OPEN, _CLOSE = b"<!--related-->", b"<!--/related-->"


def with_related(page: bytes, related: bytes) -> bytes:
    """Return a page with this list in its place; a page without the place stays as it is."""
    before, opened, rest = page.rpartition(_OPEN)
    _, closed, after = rest.partition(_CLOSE)
    if not opened or not closed:
        return page
    return b"".join((before, _OPEN, related, _CLOSE, after))
