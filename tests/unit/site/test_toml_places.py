"""Keys are found where they stand, whatever strings and comments hold."""

import tomllib

from sitegen.site.toml_places import find_item, find_keys
from sitegen.source import Source, Span

TRICKY = '''# title = "in a comment"
title = "an = sign and a # mark"
notice = """
author = "in a string"
"""
  "author" = 'Ada' # by hand
menu = [
  "about",
  "imprint",
]
look.paper = "cream"

[extra]
language = "in a table"
'''


def test_finds_the_line_and_column_of_each_top_key() -> None:
    places = find_keys(Source("site.toml", TRICKY))

    found = {name: (place.key.line, place.key.column) for name, place in places.items()}

    assert found == {
        "title": (2, 1),
        "notice": (3, 1),
        "author": (6, 3),
        "menu": (7, 1),
        "look": (11, 1),
        "extra": (13, 2),
    }


def test_finds_exactly_the_top_keys_that_the_standard_reader_finds() -> None:
    assert set(find_keys(Source("site.toml", TRICKY))) == set(tomllib.loads(TRICKY))


def test_a_value_ends_before_its_comment() -> None:
    place = find_keys(Source("site.toml", TRICKY))["author"]

    assert place.value == Span(6, 14, 6, 19)


def test_an_item_of_a_list_has_its_own_place() -> None:
    source = Source("site.toml", TRICKY)
    place = find_keys(source)["menu"]

    assert find_item(source, place, "imprint") == Span(9, 4, 9, 11)
    assert find_item(source, place, "not there") == place.value
