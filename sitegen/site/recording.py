"""The recording of a write-up: the file beside its text, and the player of its host."""

from dataclasses import replace
from pathlib import Path, PurePosixPath
from urllib.parse import urlsplit

from sitegen.article import Article, load_source
from sitegen.article.embeds import NAME, fill_seconds, is_name
from sitegen.article.front import Video
from sitegen.article.front_values import is_web_address
from sitegen.diagnostics import Diagnostic, fault
from sitegen.pages.views import Link, Player, RecordingView
from sitegen.site.attachments import FILMS, SOUNDS, Attachment, path_below, unfit
from sitegen.site.content import ContentFile
from sitegen.site.content_folder import SETTINGS_FILE, find_content
from sitegen.site.file_reading import holds_file, read_text_file
from sitegen.site.moments import file_href
from sitegen.site.settings import read_settings


def find_recording(
    file: ContentFile, article: Article
) -> tuple[Video, dict[str, Path], tuple[Diagnostic, ...]]:
    """Return the video with its player's whole address, its file by name, and the faults."""
    video, unknown = _address_player(file, article)
    path, missing = _file_beside(file, article)
    files = {} if path is None else {video.file: path}
    return video, files, tuple(wrong for wrong in (unknown, missing) if wrong is not None)


def recording_view(video: Video) -> RecordingView | None:
    """Return how the page plays a video, None where it only links to it.

    A file is preferred to a frame: the page can follow where it is.
    """
    if video.file:
        suffix = PurePosixPath(urlsplit(video.file).path).suffix.lower()
        kind: Player = "audio" if suffix in SOUNDS else "video"
        host = _host(video.file) if is_web_address(video.file) else ""
        return _view(kind, file_href(video), host, video, file_href(video))
    if video.embed:
        own_page = fill_seconds(video.embed, 0)
        return _view("frame", video.embed, _host(own_page), video, own_page)
    return None


def _view(kind: Player, address: str, host: str, video: Video, otherwise: str) -> RecordingView:
    """Link to the page where the recording is heard, else to what the button would load."""
    href = video.page or (otherwise if host else "")
    link = Link(_host(href), href) if href else None
    return RecordingView(kind, address, host, link)


def _host(address: str) -> str:
    return urlsplit(address).hostname or ""


def _address_player(file: ContentFile, article: Article) -> tuple[Video, Diagnostic | None]:
    """Fill the site's pattern with the name of the recording, where the embed is a name."""
    video = article.front.video
    if not is_name(video.embed):
        return video, None
    pattern = _site_pattern(file)
    if pattern:
        return replace(video, embed=pattern.replace(NAME, video.embed)), None
    message = f'the site does not say which host knows "{video.embed}"'
    hint = "write its address with {id} and {seconds} in site.toml, under [recording] as embed"
    span = video.places["embed"]
    unknown = fault("recording-pattern", article.source, span, message, hint=hint)
    return replace(video, embed=""), None if pattern is None else unknown


def _site_pattern(file: ContentFile) -> str | None:
    """Return the address of the player of the site's host, "" without one, None if unknown."""
    content = find_content(file.path)
    if content is None:
        return None
    path = content / SETTINGS_FILE
    try:
        source, _ = load_source(read_text_file(path, content), path.name)
    except OSError:
        return None
    read = read_settings(source)
    is_broken = any(wrong.is_error for wrong in read.diagnostics)
    return read.settings.recording.embed or (None if is_broken else "")


def _file_beside(file: ContentFile, article: Article) -> tuple[Path | None, Diagnostic | None]:
    """Return the file beside the text that holds the recording, or what is wrong with it."""
    video = article.front.video
    if not video.file or is_web_address(video.file):
        return None, None
    path = path_below(file.folder, video.file)
    if path is not None and holds_file(path):
        attached = Attachment(video.file, article.source, video.places["file"])
        wrong = unfit(path, attached, SOUNDS | FILMS)
        return (path, None) if wrong is None else (None, wrong)
    message = f'there is no recording "{video.file}" beside the text'
    return None, fault("recording-missing", article.source, video.places["file"], message)
