"""The archive's order."""

from datetime import date

from sitegen.article.front import FrontMatter
from sitegen.pages.crate import by_year
from sitegen.pages.views import ArchiveEntry


def entry(title: str, day: date | None) -> ArchiveEntry:
    return ArchiveEntry(f"{title}.html", FrontMatter(title=title, published=day), 1)


def test_years_run_back_and_days_too() -> None:
    entries = [
        entry("a", date(2024, 1, 1)),
        entry("b", date(2025, 1, 1)),
        entry("c", date(2024, 12, 31)),
    ]
    filed = [(year.name, [one.front.title for one in year.entries]) for year in by_year(entries)]
    assert filed == [("2025", ["b"]), ("2024", ["c", "a"])]


def test_one_day_is_in_the_order_of_the_alphabet() -> None:
    day = date(2024, 1, 1)
    (year,) = by_year([entry("b", day), entry("C", day), entry("a", day)])
    assert [one.front.title for one in year.entries] == ["a", "b", "C"]


def test_what_has_no_date_stands_first() -> None:
    years = by_year([entry("a", date(2024, 1, 1)), entry("b", None)])
    assert [(year.name, year.anchor) for year in years] == [
        ("Not yet published", "undated"),
        ("2024", "2024"),
    ]


def test_an_empty_archive_has_no_years() -> None:
    assert by_year([]) == ()
