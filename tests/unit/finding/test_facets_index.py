"""The archive's index files tell a browser all that is filed, and nothing twice."""

import json

import pytest
from unit.finding.drawn_archive import draw_rows

from sitegen.article import FrontMatter
from sitegen.article.front import Song
from sitegen.finding import ChartEntry, Entry, Section
from sitegen.finding.facets_index import RECORDS, facet_files, has_picture, packed
from sitegen.finding.filing import file_write_ups

DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"


def unpacked(text: str) -> list[int]:
    """Return the numbers again, by the docstring of `packed`."""
    numbers: list[int] = []
    distance = power = 0
    for sign in text:
        digit = DIGITS.index(sign)
        distance += digit % 32 * 32**power
        power += 1
        if digit < 32:
            numbers.append((numbers[-1] if numbers else -1) + distance + 1)
            distance = power = 0
    return numbers


@pytest.mark.parametrize(
    "numbers", [[], [0], [0, 1, 2], [31], [32], [33, 64, 97], [1023, 1024, 2048, 40000]]
)
def test_rising_numbers_are_packed_and_come_back(numbers: list[int]) -> None:
    assert unpacked(packed(numbers)) == numbers


def test_neighbours_take_one_letter_each() -> None:
    assert packed(range(5000)) == "A" * 5000


def test_the_files_hold_all_that_is_filed() -> None:
    rows = [(f"breakdowns/n{n}/", *row, n == 7) for n, row in enumerate(draw_rows(5, 70))]
    filed = file_write_ups([(front, entry) for _, front, entry, _ in rows])
    files = {name: json.loads(data) for name, data in facet_files(rows, filed)}
    assert set(files) == {
        "facets.json", "facets-names.json", "titles.json",
        "records-0.json", "records-1.json", "records-2.json",
    }  # fmt: skip
    told = {one[0]: one for one in (*files["facets.json"]["facets"], *files["facets-names.json"])}
    for one in filed:
        _, name, words, addresses, numbers = told.pop(one.facet.id)
        assert name == one.facet.name
        assert words == [value.words for value in one.values]
        plain = [word.lower().replace(" ", "-") for word in words]
        whole = [address or other for address, other in zip(addresses, plain, strict=True)]
        assert whole == [value.address for value in one.values]
        assert [tuple(unpacked(text)) for text in numbers.split(" ")] == [
            value.numbers for value in one.values
        ]
    assert told == {}
    records = [record for n in range(3) for record in files[f"records-{n}.json"]]
    assert [record[0] for record in records] == [address for address, *_ in rows]
    assert len(files["records-0.json"]) == RECORDS
    assert [n for n, record in enumerate(records) if record[5] & 1] == [7]
    for (_, front, _, _), title in zip(rows, files["titles.json"], strict=True):
        assert all(words in title for words in (front.title, front.song.title, front.song.artist))


def test_an_empty_archive_has_empty_files() -> None:
    files = {name: json.loads(data) for name, data in facet_files([], [])}
    assert files == {
        "facets.json": {"count": 0, "tempos": [], "facets": []},
        "facets-names.json": [],
        "titles.json": [],
    }


def test_titles_say_nothing_twice() -> None:
    song = Song("Low Tide", "The Lamps")
    front = FrontMatter(title="Low Tide: two chords", song=song)
    files = dict(facet_files([("a/", front, Entry(), False)], []))
    assert json.loads(files["titles.json"]) == ["Low Tide: two chords, The Lamps"]


def test_a_write_up_of_words_alone_has_no_picture() -> None:
    assert not has_picture(Entry())
    assert has_picture(Entry((ChartEntry("a", "", "", "changes"),)))
    assert has_picture(Entry((), (Section("Verse", "A", 8),)))
