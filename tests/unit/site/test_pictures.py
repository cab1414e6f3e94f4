"""The archive in pictures counts what is filed, and leads to what it counts."""

from dataclasses import replace

from unit.site.publications.filing import COAT, TIDE, listed

from sitegen.article import FrontMatter
from sitegen.article.front import Song
from sitegen.finding import Entry, Section
from sitegen.score.key import Key
from sitegen.site.listing import Listed
from sitegen.site.pictures import MOST_BARS, pictures_of, plans_of


def in_key(slug: str, key: str, length: int) -> Listed:
    return listed(slug, FrontMatter(slug, song=Song(slug, key=Key.read(key), length=length)))


KEYS = [in_key("a", "E minor", 200), in_key("b", "G", 210), in_key("c", "E minor", 100)]


def test_bars_are_as_long_as_their_counts() -> None:
    pictures = {picture.id: picture for picture in pictures_of(KEYS)}
    told = [(bar.link.text, bar.count, bar.length) for bar in pictures["key"].bars]
    assert told == [("E minor", 2, 100), ("G major", 1, 50)]
    told = [(bar.link.text, bar.count, bar.length) for bar in pictures["length"].bars]
    assert told == [("1 to 2 minutes", 1, 50), ("3 to 4 minutes", 2, 100)]


def test_a_bar_leads_to_its_write_ups() -> None:
    (bar, *_) = pictures_of(KEYS)[0].bars
    assert bar.link.href == "../archive/key/e-minor/index.html"


def test_what_nobody_says_has_no_picture() -> None:
    assert pictures_of([]) == ()
    assert {picture.id for picture in pictures_of(KEYS)} == {"key", "length"}


def test_of_very_many_values_the_commonest_are_shown() -> None:
    keys = [f"{letter}{sign} {mode}" for letter in "CDEFGAB" for sign in ("", "b")
            for mode in ("major", "minor")]  # fmt: skip
    many = [in_key(f"w{n}", key, 200) for n, key in enumerate(keys)]
    picture = pictures_of([*many, in_key("x", "Db", 200)])[0]
    assert len(picture.bars) == MOST_BARS
    assert picture.rest is not None
    assert any(bar.count == 2 for bar in picture.bars)


def test_plans_stand_to_one_scale() -> None:
    short = replace(COAT, entry=Entry((), (Section("Verse", "A", 8),)))
    parts = (Section("Verse", "A", 16), Section("Chorus", "B", 8))
    view = plans_of([short, replace(TIDE, entry=Entry((), parts)), *KEYS])
    assert view is not None
    assert view.longest == 24
    assert [(strip.link.text, strip.letters, strip.bars) for strip in view.strips] == [
        ("The Coat", "A", 8),
        ("Low Tide", "A B", 24),
    ]
    assert plans_of(KEYS) is None
