"""The settings of a site: the file site.toml at the top of the content folder."""

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass, field, fields
from typing import Any, Literal
from urllib.parse import urlsplit

from sitegen.article.embeds import read_pattern
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.site.toml_places import KeyPlace, find_item, find_keys
from sitegen.source import Source, Span

LONGEST_TEXT = 500
_LANGUAGE = re.compile(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*")
_ADDRESS = re.compile(r"https?://[^\s/?#]+(/[^\s?#]*)?")
_LONG_NUMBER = re.compile(r"[0-9_]{1000,}")
_PLACE_IN_MESSAGE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


Feed = Literal["full", "summary"]


@dataclass(frozen=True)
class RecordingSettings:
    """How the site shows recordings; `embed` is the address of its host's player, or "".

    It has the place `{id}` for what the host calls a recording, and `{seconds}` for the start.
    """

    embed: str = ""


@dataclass(frozen=True)
class Settings:
    """What a site says of itself.

    `language` is a BCP 47 tag; `address` the site's public address or ""; `theme` a theme's name
    or a folder; `menu` the free pages to list, None for all of them; `notice` a line for the
    foot of every page; `feed` says whether the feed has whole texts or their summaries.
    """

    title: str = ""
    tagline: str = ""
    author: str = ""
    language: str = "en"
    address: str = ""
    theme: str = "liner"
    menu: tuple[str, ...] | None = None
    notice: str = ""
    recording: RecordingSettings = field(default=RecordingSettings())
    feed: Feed = "full"


@dataclass(frozen=True)
class SettingsFile:
    """Settings as read from a file, with the places of their fields for later faults."""

    settings: Settings
    source: Source
    places: dict[str, KeyPlace]
    diagnostics: tuple[Diagnostic, ...]

    def span(self, name: str, item: str = "") -> Span:
        """Return where the value of field `name`, or one `item` of it, stands."""
        place = self.places.get(name)
        if place is None:
            return self.source.line_span(1)
        return find_item(self.source, place, item)


def read_settings(source: Source) -> SettingsFile:
    """Return the settings in the text of site.toml with every fault in it."""
    try:
        values = tomllib.loads(source.text)
    except tomllib.TOMLDecodeError as wrong:
        return SettingsFile(Settings(), source, {}, (_syntax_fault(source, str(wrong)),))
    except ValueError:  # of the language itself: a number that it does not take
        number = _LONG_NUMBER.search(source.text)
        span = source.span(*number.span()) if number else source.line_span(1)
        long = fault("settings-syntax", source, span, "the number has too many digits")
        return SettingsFile(Settings(), source, {}, (long,))
    except RecursionError:
        deep = fault("settings-syntax", source, source.line_span(1), "too many nested brackets")
        return SettingsFile(Settings(), source, {}, (deep,))
    return _Reader(source, values).read()


class _ItemError(ValueError):
    """Something inside a table is wrong; `item` is its text."""

    def __init__(self, message: str, item: str) -> None:
        super().__init__(message)
        self.item = item


class _Reader:
    """Reads the parsed values field by field and collects the faults."""

    def __init__(self, source: Source, values: dict[str, Any]) -> None:
        self.source = source
        self.values = values
        self.places = find_keys(source)
        self.faults: list[Diagnostic] = []

    def read(self) -> SettingsFile:
        known = {field.name for field in fields(Settings)}
        for name in self.values:
            if name not in known:
                message = f'no setting is called "{name}"'
                hint = did_you_mean(name, known)
                self._report("settings-field", self._place(name).key, message, hint)
        read = {name: self._take(name) for name in known & self.values.keys()}
        settings = Settings(**{name: value for name, value in read.items() if value is not None})
        if "title" not in self.values:
            hint = 'write a line such as title = "Liner and Line"'
            self._report(
                "settings-missing", self.source.line_span(1), "the site has no title", hint
            )
        return SettingsFile(settings, self.source, self.places, tuple(self.faults))

    def _take(self, name: str) -> Any:  # noqa: ANN401 - each field has a type of its own
        try:
            return _READERS[name](self.values[name])
        except ValueError as wrong:
            item = wrong.item if isinstance(wrong, _ItemError) else ""
            span = find_item(self.source, self._place(name), item)
            message, _, hint = str(wrong).partition("; ")
            self._report("settings-value", span, f"{name}: {message}", hint)
            return None

    def _place(self, name: str) -> KeyPlace:
        first = self.source.line_span(1)
        return self.places.get(name, KeyPlace(first, first, 0))

    def _report(self, code: str, span: Span, message: str, hint: str = "") -> None:
        self.faults.append(fault(code, self.source, span, message, hint=hint))


def _syntax_fault(source: Source, message: str) -> Diagnostic:
    """Return the fault for the standard reader's message, which ends in its place."""
    match = _PLACE_IN_MESSAGE.search(message)
    if match is None or match[1] is None:
        line = len(source.text.rstrip().split("\n"))
        column = len(source.lines[line - 1]) + 1
    else:
        line, column = int(match[1]), int(match[2])
    words = _PLACE_IN_MESSAGE.sub("", message)
    what = f"this is not TOML: {words[:1].lower()}{words[1:]}"
    span = Span(line, column, line, column + 1)
    return fault("settings-syntax", source, span, what, hint='a setting is written name = "value"')


def _read_text(value: object) -> str:
    if not isinstance(value, str):
        raise ValueError("a text in quotes belongs here")  # noqa: TRY004 - a fault of the author
    text = value.strip()
    if len(text) > LONGEST_TEXT:
        raise ValueError(f"more than {LONGEST_TEXT} characters")
    if any(ord(char) < ord(" ") for char in text):
        raise ValueError("one line of text belongs here")
    return text


def _read_filled_text(value: object) -> str:
    text = _read_text(value)
    if not text:
        raise ValueError("the text is empty")
    return text


def _read_language(value: object) -> str:
    text = _read_text(value)
    if not _LANGUAGE.fullmatch(text):
        raise ValueError(f'"{text}" is not a language tag such as en or pt-BR')
    return text


def _read_address(value: object) -> str:
    text = _read_text(value)
    if text and not (_ADDRESS.fullmatch(text) and _is_sound(text)):
        raise ValueError(f'"{text}" is not an address such as https://example.org/')
    return text


def _is_sound(address: str) -> bool:
    """Tell whether an address can be taken apart; an open bracket in its host cannot."""
    try:
        return bool(urlsplit(address).hostname)
    except ValueError:
        return False


def _read_feed(value: object) -> Feed:
    match _read_text(value):
        case "full":
            return "full"
        case "summary":
            return "summary"
        case text:
            raise ValueError(f'"{text}" is neither full nor summary')


def _read_menu(value: object) -> tuple[str, ...]:
    if not isinstance(value, list) or not all(isinstance(item, str) for item in value):
        raise ValueError('a list of page names belongs here, such as ["about"]')
    if len(set(value)) < len(value):
        raise ValueError("a page stands in the menu twice")
    return tuple(value)


def _read_recording(value: object) -> RecordingSettings:
    if not isinstance(value, dict):
        raise ValueError('a table belongs here, such as [recording] and below it embed = "..."')  # noqa: TRY004 - a fault of the author
    for name in value:
        if name != "embed":
            raise _ItemError(f'no setting of a recording is called "{name}"', name)
    return RecordingSettings(_read_embed(value.get("embed", "")))


def _read_embed(value: object) -> str:
    text = _read_text(value)
    try:
        return read_pattern(text) if text else ""
    except ValueError as wrong:
        raise _ItemError(f"embed: {wrong}", text) from None


_READERS: dict[str, Callable[[object], Any]] = {
    "title": _read_filled_text,
    "tagline": _read_text,
    "author": _read_text,
    "language": _read_language,
    "address": _read_address,
    "theme": _read_filled_text,
    "menu": _read_menu,
    "notice": _read_text,
    "feed": _read_feed,
    "recording": _read_recording,
}
