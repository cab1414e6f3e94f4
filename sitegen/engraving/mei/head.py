"""The head of an MEI file that leaves its page: what it is, and whose the music is."""

from xml.etree.ElementTree import Element

from sitegen import __version__
from sitegen.engraving.markup import serialise
from sitegen.engraving.mei.element import child
from sitegen.score.credits import Credits

_TAG = "meiHead"


def with_head(mei: str, title: str, credits_: Credits) -> str:
    """Return an MEI file of this room with a head that tells title, song, writers and rights.

    Nothing else changes. The file that is drawn from does without: nobody reads its head.
    """
    before, _, rest = mei.partition(f"<{_TAG}>")
    after = rest.partition(f"</{_TAG}>")[2]
    return f"{before}{serialise(_head(title, credits_))}{after}"


def _head(title: str, credits_: Credits) -> Element:
    head = Element(_TAG)
    description = child(head, "fileDesc")
    child(child(description, "titleStmt"), "title").text = title
    publication = child(description, "pubStmt")
    if credits_.rights:
        home = child(child(publication, "availability"), "useRestrict")
        child(home, "p").text = credits_.rights
    program = child(child(child(head, "encodingDesc"), "appInfo"), "application")
    program.set("version", __version__)
    child(program, "name").text = "sitegen"
    if credits_.song:
        _write_work(head, credits_)
    return head


def _write_work(head: Element, credits_: Credits) -> None:
    work = child(child(head, "workList"), "work")
    child(work, "title").text = credits_.song
    for writer in credits_.writers:
        child(work, "composer").text = writer
    if credits_.artist:
        child(work, "contributor", role="performer").text = credits_.artist
