"""Score files looked at before any reader of music sees them: size, entities, compressed parts."""

import io
import re
import zipfile
import zlib
from pathlib import PurePosixPath
from xml.etree import ElementTree as ET

LARGEST = 4_000_000
"""Bytes of a score, compressed or not: a symphony in MusicXML has about as many."""
_MOST_MEMBERS = 64
_MOST_RATIO = 200
_CONTAINER = "META-INF/container.xml"

# A name in quotation marks may hold the sign that would end the declaration.
_DOCTYPE = re.compile(r"""<!DOCTYPE(?:[^>"'\[]|"[^"]*"|'[^']*')*(\[)?""", re.IGNORECASE)
_DECLARED = re.compile(r"<!(?:ENTITY|ELEMENT|ATTLIST|NOTATION)", re.IGNORECASE)
_XML = re.compile(rb"""\s*<\?xml[^>]*?encoding\s*=\s*["']([A-Za-z0-9._-]+)["']""")
_DECLARATION = re.compile(r"\s*<\?xml.*?\?>", re.DOTALL)
_ENCODINGS = frozenset({"utf-8", "us-ascii", "iso-8859-1", "windows-1252", "utf-16"})


class ScoreError(Exception):
    """A score file that is not read; the text says why, as the end of a sentence."""


def read_text(data: bytes, encoding: str = "utf-8") -> str:
    """Return a file as text; raises ScoreError for what is none."""
    try:
        text = data.removeprefix(b"\xef\xbb\xbf").decode(encoding)
    except UnicodeDecodeError as wrong:
        line = data.count(b"\n", 0, wrong.start) + 1
        raise ScoreError(f"it is not text in {encoding.upper()} (line {line})") from wrong
    if "\x00" in text:
        raise ScoreError("it is not text")
    return text


def read_plain(data: bytes) -> str:
    """Return as text a file that says no encoding: UTF-8, else the Latin-1 of old ones."""
    try:
        return read_text(data)
    except ScoreError:
        return read_text(data, "iso-8859-1")


def read_xml(data: bytes) -> str:
    """Return XML as text without its declaration.

    Raises ScoreError for what could make a reader do more than read: a document type by name is
    usual in MusicXML; one with declarations of its own, or any entity, is not let through.
    """
    said = _XML.match(data.removeprefix(b"\xef\xbb\xbf"))
    encoding = said[1].decode().lower() if said else "utf-8"
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        encoding = "utf-16"
    if encoding not in _ENCODINGS:
        raise ScoreError(f"it is in {encoding}; save it in UTF-8")
    text = read_text(data, encoding)
    declared = _DECLARED.search(text)
    if declared is not None:
        what = "entities" if "ENTITY" in declared[0].upper() else "a document of its own"
        raise ScoreError(f"it declares {what}, which no score needs")
    found = _DOCTYPE.search(text)
    if found is not None and found[1]:
        raise ScoreError("it declares a document type of its own, which no score needs")
    return _DECLARATION.sub(_blank, text, count=1) if _DECLARATION.match(text) else text


def _blank(found: "re.Match[str]") -> str:
    """Return as many lines as a declaration has, so that those that are told are the file's."""
    return "\n" * found[0].count("\n")


def unpack(data: bytes) -> bytes:
    """Return the score in a compressed MusicXML file; raises ScoreError for any other archive."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return _member(archive, _root_file(archive))
    except (zipfile.BadZipFile, zipfile.LargeZipFile, NotImplementedError, RuntimeError) as wrong:
        raise ScoreError(f"it is no compressed score that can be opened: {wrong}") from wrong
    except (OSError, EOFError, ValueError, KeyError, zlib.error) as wrong:
        raise ScoreError("it is no compressed score that can be opened") from wrong


def _root_file(archive: zipfile.ZipFile) -> str:
    """Return the name of the score: the container says it, else there is one alone."""
    names = archive.namelist()
    if len(names) > _MOST_MEMBERS:
        raise ScoreError(f"it holds more than {_MOST_MEMBERS} files")
    if _CONTAINER in names:
        text = read_xml(_member(archive, _CONTAINER))
        try:
            roots = [node.get("full-path") for node in ET.fromstring(text).iter()]  # noqa: S314 - checked
        except ET.ParseError as wrong:
            raise ScoreError("its container cannot be read") from wrong
        named = next((name for name in roots if name), None)
        if named in names:
            return str(named)
    scores = [name for name in names if PurePosixPath(name).suffix in {".xml", ".musicxml"}]
    scores = [name for name in scores if not name.startswith("META-INF/")]
    if len(scores) != 1:
        raise ScoreError("it does not say which of its files is the score")
    return scores[0]


def _member(archive: zipfile.ZipFile, name: str) -> bytes:
    """Return a file of an archive; what its head says of its size is not believed."""
    info = archive.getinfo(name)
    packed = max(info.compress_size, 1)
    if info.file_size > LARGEST or info.file_size > _MOST_RATIO * packed:
        raise ScoreError("what is packed in it is far larger than a score")
    if info.compress_type not in {zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED}:
        raise ScoreError("it is packed in a way that no score is")
    with archive.open(info) as stream:
        data = stream.read(LARGEST + 1)
    if len(data) > LARGEST:
        raise ScoreError("what is packed in it is far larger than a score")
    return data
