"""The file site.toml, held against what the content folder really holds."""

from dataclasses import replace

from sitegen.article import load_source
from sitegen.diagnostics import Diagnostic, did_you_mean, fault
from sitegen.site.content import Content, shown, unreadable
from sitegen.site.file_reading import read_text_file
from sitegen.site.settings import Settings, SettingsFile, read_settings
from sitegen.site.theme_folder import find_theme, theme_names
from sitegen.source import Source


def load_settings(content: Content) -> SettingsFile:
    """Return the settings of a content folder with every fault in them."""
    name = shown(content.settings_path)
    try:
        data = read_text_file(content.settings_path, content.folder)
    except OSError as wrong:
        source = Source(name, "")
        return SettingsFile(Settings(), source, {}, (unreadable(content.settings_path, wrong),))
    source, faults = load_source(data, name)
    file = read_settings(source)
    more = (*_theme_faults(file, content), *_menu_faults(file, content))
    return replace(file, diagnostics=(*faults, *file.diagnostics, *more))


def _theme_faults(file: SettingsFile, content: Content) -> list[Diagnostic]:
    name = file.settings.theme
    if find_theme(name, content.folder) is not None:
        return []
    message = f'no theme is called "{name}"'
    hint = did_you_mean(name, theme_names())
    return [fault("settings-theme", file.source, file.span("theme"), message, hint=hint)]


def _menu_faults(file: SettingsFile, content: Content) -> list[Diagnostic]:
    known = [page.slug for page in content.pages]
    return [
        fault(
            "settings-menu",
            file.source,
            file.span("menu", slug),
            f'the menu lists "{slug}", and no page has that name',
            hint=did_you_mean(slug, known),
        )
        for slug in file.settings.menu or ()
        if slug not in known
    ]
