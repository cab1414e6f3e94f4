"""Score files looked at before any reader of music sees them: size, entities, compressed parts."""

import io
import re
import zipfile
from pathlib import PurePosixPath
from xml.etree import ElementTree as ET

LARGEST = 4_000_000
"""Bytes of a score, compressed or not: a symphony in MusicXML has about as many."""
_MOST_MEMBERS = 64
_MOST_RATIO = 200
_CONTAINER = "META-INF/container.xml"
_PROLOG = 100_000

_DOCTYPE = re.compile(rb"<!DOCTYPE[^>\[]*(\[)?", re.IGNORECASE)
_ENTITY = re.compile(rb"<!ENTITY", re.IGNORECASE)


class ScoreError(Exception):
    """A score file that is not read; the text says why, as the end of a sentence."""


def check_xml(data: bytes) -> None:
    """Raise ScoreError for XML that could make a reader do more than read.

    A document type by name is usual in MusicXML; one with declarations of its own, or any entity,
    is not let through. Text in UTF-16 could hide both, and no program writes scores in it.
    """
    if data[:2] in {b"\xff\xfe", b"\xfe\xff"} or b"\x00" in data[:_PROLOG]:
        raise ScoreError("it is not text in UTF-8")
    if _ENTITY.search(data):
        raise ScoreError("it declares entities, which no score needs")
    found = _DOCTYPE.search(data)
    if found is not None and found[1]:
        raise ScoreError("it declares a document type of its own, which no score needs")


def unpack(data: bytes) -> bytes:
    """Return the score in a compressed MusicXML file; raises ScoreError for any other archive."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return _member(archive, _root_file(archive))
    except (zipfile.BadZipFile, zipfile.LargeZipFile, NotImplementedError, RuntimeError) as wrong:
        raise ScoreError(f"it is no compressed score that can be opened: {wrong}") from wrong
    except (OSError, EOFError, ValueError, KeyError) as wrong:
        raise ScoreError("it is no compressed score that can be opened") from wrong


def _root_file(archive: zipfile.ZipFile) -> str:
    """Return the name of the score: the container says it, else there is one alone."""
    names = archive.namelist()
    if len(names) > _MOST_MEMBERS:
        raise ScoreError(f"it holds more than {_MOST_MEMBERS} files")
    if _CONTAINER in names:
        data = _member(archive, _CONTAINER)
        check_xml(data)
        try:
            roots = [node.get("full-path") for node in ET.fromstring(data).iter()]  # noqa: S314 - checked
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
    with archive.open(info) as stream:
        data = stream.read(LARGEST + 1)
    if len(data) > LARGEST:
        raise ScoreError("what is packed in it is far larger than a score")
    return data
