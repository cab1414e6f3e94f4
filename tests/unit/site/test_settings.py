"""The settings are read field by field, and all faults are told at once."""

import pytest

from sitegen.site.settings import RecordingSettings, Settings, SettingsFile, read_settings
from sitegen.source import Source


def read(text: str) -> SettingsFile:
    return read_settings(Source("site.toml", text))


def faults(text: str) -> list[tuple[str, int, int]]:
    return [(d.code, d.span.line, d.span.column) for d in read(text).diagnostics]


def test_reads_every_field() -> None:
    text = """
title = " Side Two "
tagline = "Songs, taken apart"
author = "R. Venn"
language = "pt-BR"
address = "https://example.org/music/"
theme = "liner"
menu = ["about"]
notice = "No songs were harmed"

[recording]
embed = "https://host.example/frame/{id}?start={seconds}"
"""

    file = read(text)

    assert file.diagnostics == ()
    assert file.settings == Settings(
        "Side Two",
        "Songs, taken apart",
        "R. Venn",
        "pt-BR",
        "https://example.org/music/",
        "liner",
        ("about",),
        "No songs were harmed",
        RecordingSettings("https://host.example/frame/{id}?start={seconds}"),
    )


def test_a_title_is_enough() -> None:
    file = read('title = "Side Two"')

    assert file.diagnostics == ()
    assert file.settings.language == "en"
    assert file.settings.menu is None


def test_tells_all_faults_at_once_each_at_its_own_place() -> None:
    text = 'titel = "x"\nlanguage = "english please"\nmenu = "about"\naddress = "example.org"\n'

    assert sorted(faults(text)) == [
        ("settings-field", 1, 1),
        ("settings-missing", 1, 1),
        ("settings-value", 2, 12),
        ("settings-value", 3, 8),
        ("settings-value", 4, 11),
    ]


def test_an_unknown_field_brings_the_nearest_name() -> None:
    (unknown,) = read('title = "x"\ntaglin = "y"').diagnostics

    assert unknown.hint == 'did you mean "tagline"?'


@pytest.mark.parametrize(
    "value", ["3", '""', '"   "', "[]", "true", '"""a\nb"""', f'"{"x" * 501}"', "1979-05-27"]
)
def test_a_title_must_be_one_line_of_text(value: str) -> None:
    assert faults(f"title = {value}") == [("settings-value", 1, 9)]


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ('title = "x"\ntagline = \n', 2, 11),
        ("title = x", 1, 9),
        ('title = "x"\ntitle = "y"\n', 2, 12),
        ('title = "x', 1, 11),
        ("menu = [", 1, 9),
        ("título = 1", 1, 2),
    ],
)
def test_a_fault_of_syntax_has_its_line_and_column(text: str, line: int, column: int) -> None:
    assert faults(text) == [("settings-syntax", line, column)]


def test_bottomless_nesting_is_a_fault_and_no_traceback() -> None:
    assert faults("menu = " + "[" * 100_000) == [("settings-syntax", 1, 1)]


def test_knows_the_place_of_one_menu_entry() -> None:
    file = read('title = "x"\nmenu = ["about", "imprint"]')

    assert file.span("menu", "imprint").column == 19


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ('recording = "x"', 2, 13),
        ('[recording]\nembd = "x"', 3, 1),
        ("[recording]\nembed = 7", 2, 2),
        ('[recording]\nembed = "https://a.example/{id}"', 3, 10),
        ('[recording]\nembed = "http://a.example/{id}/{seconds}"', 3, 10),
        ('recording.embed = "https://{id}.example/{seconds}"', 2, 20),
    ],
)
def test_a_recording_that_no_frame_could_show_is_a_fault_in_its_place(
    text: str, line: int, column: int
) -> None:
    assert faults(f'title = "x"\n{text}') == [("settings-value", line, column)]


@pytest.mark.parametrize("address", ["http://[x", "https://", "https:///music/"])
def test_an_address_that_cannot_be_taken_apart_is_a_fault(address: str) -> None:
    assert faults(f'title = "x"\naddress = "{address}"') == [("settings-value", 2, 11)]


@pytest.mark.parametrize("number", ["9" * 5000, "-" + "9" * 5000, "1_" * 5000 + "1"])
def test_an_endless_number_is_a_fault_at_its_place(number: str) -> None:
    assert faults(f'title = "Side Two"\nmenu = {number}\n') == [
        ("settings-syntax", 2, 9 if number[0] == "-" else 8)
    ]
