"""A kept drawing is used only where a new one would be the same: every input is in its hash."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.kinds import KINDS
from sitegen.site.build import build_site
from sitegen.site.order import Order

PAGE = Path("published/breakdowns/low-tide")
ARTICLE = """\
---
title: Low Tide
summary: For a test.
status: published
published: 2026-05-04
song:
  title: Low Tide
  artist: The Examples
  key: E minor
  tempo: 96
rights:
  holder: The Examples
---

It opens.

## Verse

```notation
id: riff
bass: standard

count | 1   2   3   4   |
chord | Em              |
bass  | E1  G1  A1  B1  |
```

```changes
id: verse
| Em | C | G | D |
```

```changes
id: chorus
| G | D | Em | C |
```

```form
id: plan
Intro | 8 | 0:00 | changes: riff
Verse | 16 | 0:20 | changes: verse
```
"""
EDITS = {
    "the song's key": ("key: E minor", "key: G major"),
    "the song's tempo": ("tempo: 96", "tempo: 104"),
    "a note": ("A1  B1", "A1  C2"),
    "a chord": ("| G |", "| Gmaj7 |"),
    "a heading that the plan leads to": ("## Verse", "## First verse"),
    "the name of a chart that the plan leads to": ("changes: verse", "changes: riff"),
    "whose the song is": ("holder: The Examples", "holder: Somebody Else"),
    "whose song it is": ("artist: The Examples", "artist: The Others"),
    "a chart before the others": ("## Verse\n", "## Verse\n\n```changes\nid: new\n| C |\n```\n"),
    "a chart that another one is like": ("| Em | C | G | D |", "| Em | B7 | Em | B7 |"),
    "a word of the text": ("It opens.", "It begins."),
}


def page() -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in PAGE.iterdir()}


@pytest.mark.parametrize(("old", "new"), EDITS.values(), ids=EDITS)
def test_after_an_edit_the_page_is_what_a_first_build_makes(
    content: Path, tmp_path: Path, old: str, new: str
) -> None:
    article = content / "breakdowns" / "low-tide" / "article.md"
    article.parent.mkdir(parents=True)
    article.write_text(ARTICLE, encoding="utf-8")
    order = Order(content, Path("published"), KINDS, jobs=1, cache=tmp_path / "cache")
    report = build_site(order, lambda *_: None)
    assert [found.message for found in report.diagnostics if found.is_error] == []
    before = page()
    assert old in ARTICLE
    article.write_text(ARTICLE.replace(old, new, 1), encoding="utf-8")

    build_site(order, lambda *_: None)

    made = page()
    shutil.rmtree("published")
    build_site(replace(order, cache=None), lambda *_: None)
    assert made == page()
    assert made != before
