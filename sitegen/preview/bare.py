"""The preview's own part of a page: its script, and a page for what could never be made."""

from collections.abc import Iterable
from html import escape

from sitegen.preview.remarks import Remark

_PAGE = """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Not made yet</title>
<style>
body {{ margin: 2rem auto; max-width: 40rem; padding: 0 1rem; font: 1.1rem/1.5 serif; }}
pre {{ white-space: pre-wrap; overflow-wrap: anywhere; }}
</style>
</head>
<body>
<main>
<h1>This page could not be made yet</h1>
<p>It appears here as soon as what is wrong with it is mended.</p>
<noscript>
{frames}
</noscript>
</main>
</body>
</html>
"""


def bare_page(remarks: Iterable[Remark]) -> bytes:
    """Return a page that says what is wrong; with scripts, its frames are shown by the script."""
    frames = "\n".join(f"<pre>{escape(remark.frame)}</pre>" for remark in remarks)
    return _PAGE.format(frames=frames).encode()


def with_script(page: bytes, script: str, state: str) -> bytes:
    """Return a page with the preview's script, which is told which state of it this is."""
    tag = f'<script defer src="{script}" data-state="{escape(state)}"></script>\n'.encode()
    before, end, after = page.rpartition(b"</body>")
    return before + tag + end + after if end else page + tag
