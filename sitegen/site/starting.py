"""A new write-up to start from: it builds at once and says what to replace."""

import json
from pathlib import Path

from sitegen.article.decoding import without_unprintable
from sitegen.site.content import ARTICLE_FILE, ARTICLES_FOLDER, SLUG, is_inside
from sitegen.site.content_folder import SETTINGS_FILE
from sitegen.site.file_names import find_name_fault
from sitegen.site.refusal import RefusedError

_SETTINGS = """\
# What the site says of itself.
title = "Taken Apart"
tagline = "Songs, bar by bar"
author = ""
language = "en"
theme = "liner"
"""

_ARTICLE = """\
---
title: {title}
summary: One or two sentences that say what is worth hearing in this song.
status: draft
song:
  title: The song's title
  artist: Who plays it
  key: G major
  meter: 4/4
  tempo: 120
topics: [melody]
---

Start with what a listener notices first. Everything on this page is there to be replaced:
the words, the three charts, and the front matter between the two lines of hyphens above.
When the write-up is ready, change `status: draft` to `status: published` and add the day, as in
`published: 2026-05-04`.

## The verse

Type the progression bar by bar. Two chords in a bar share it evenly; `/` or `.` holds a chord
for one more beat.

```changes
id: verse
title: Verse

| G | Em7 | C | D/F# |
```

Name a chord in a sentence as {{chord D/F#}}, and point to a chart by its id: {{see verse}}.

## The tune

Write what you count: what starts in the same column starts at the same time. The tune begins
on the third of {{chord G}} and comes to rest on {{note D5}} in {{see opening}}.

```notation
id: opening
title: Opening line

count | 1   &   2   &   3   &   4   &   | 1   &   2   &   3   &   4   &   |
chord | G                               | Em7                             |
voice | B4      D5      E5  D5  r       | G4      B4      D5              |
words | Write   what    you count       | and     hear    it              |
bass  | G2              D2              | E2              B1              |
```

## The whole song

One section a line: name, bars, where it starts in the recording. The letters are found by
themselves: a section that says `= Verse 1` gets the same letter.

```form
id: plan
title: The song at a glance

Intro    | 4 | 0:00
Verse 1  | 8 | 0:08 | changes: verse
Chorus 1 | 8 | 0:24
Verse 2  | 8 | 0:40 | = Verse 1
Chorus 2 | 8 | 0:56 | = Chorus 1
End      | 4 | 1:12
```
"""


def start_article(content: Path, slug: str, title: str = "") -> tuple[Path, ...]:
    """Write a new write-up into the folder `content`, with settings if it has none.

    Returns the files that were written, the write-up last. Raises RefusedError when the slug
    cannot be an address, when the write-up exists or when the system refuses.
    """
    if not SLUG.fullmatch(slug):
        raise RefusedError(
            f'"{slug}" cannot be part of an address: use letters, digits and single hyphens'
        )
    reason = find_name_fault(slug)
    if reason:
        raise RefusedError(f'"{slug}" {reason}')
    path = content / ARTICLES_FOLDER / slug / ARTICLE_FILE
    if path.parent.exists() or path.parent.is_symlink():
        raise RefusedError(f"{path.parent} is there already")
    if not is_inside(path, content):
        raise RefusedError(f"{path.parent.parent} is a link to a place outside the content folder")
    texts = {} if (content / SETTINGS_FILE).exists() else {content / SETTINGS_FILE: _SETTINGS}
    printed = without_unprintable(" ".join(title.split()))
    texts[path] = article_text(printed or title_of(slug))
    try:
        for file, text in texts.items():
            file.parent.mkdir(parents=True, exist_ok=True)
            with file.open("x", encoding="utf-8", newline="\n") as stream:
                stream.write(text)
    except OSError as wrong:
        raise RefusedError(f"{path} cannot be written: {wrong.strerror}") from wrong
    return tuple(texts)


def article_text(title: str) -> str:
    """Return the text of a new write-up."""
    return _ARTICLE.format(title=json.dumps(title, ensure_ascii=False))


def title_of(slug: str) -> str:
    """Return a title for a slug: low-tide makes "Low tide"."""
    words = slug.replace("-", " ").replace("_", " ").strip()
    return words[:1].upper() + words[1:]
