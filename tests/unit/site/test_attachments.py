"""Pictures lie in the write-up's own folder, and nothing else is published with it."""

import os
from pathlib import Path

import pytest

from sitegen.article import ImageUse
from sitegen.site.attachments import find_images
from sitegen.site.content import ContentFile
from sitegen.source import Source, Span

SOURCE = Source("article.md", "![x](y)\n")


@pytest.fixture
def file(tmp_path: Path) -> ContentFile:
    folder = tmp_path / "low-tide"
    (folder / "pictures").mkdir(parents=True)
    (folder / "pictures" / "my stage.png").touch()
    (folder / "stage.png").touch()
    (tmp_path / "secret.png").touch()
    (folder / "link.png").symlink_to(tmp_path / "secret.png")
    (folder / "circle.png").symlink_to(folder / "circle.png")
    return ContentFile("low-tide", folder / "article.md")


def find(file: ContentFile, target: str) -> tuple[dict[str, Path], list[str]]:
    found, faults = find_images(file, SOURCE, [ImageUse(target, "x", Span(1, 1, 1, 2))])
    return found, [one.code for one in faults]


@pytest.mark.parametrize(
    ("target", "name"),
    [("stage.png", "stage.png"), ("pictures/my%20stage.png", "pictures/my stage.png")],
)
def test_a_picture_beside_the_text_is_found(file: ContentFile, target: str, name: str) -> None:
    assert find(file, target) == ({name: file.folder / name}, [])


@pytest.mark.parametrize("target", ["stag.png", "pictures", ""])
def test_a_missing_picture_is_a_fault(file: ContentFile, target: str) -> None:
    found, codes = find(file, target)

    assert (found, codes) == ({}, ["image-missing"])


@pytest.mark.parametrize(
    "target",
    [
        "../secret.png",
        "pictures/../../secret.png",
        "/etc/hostname",
        "https://example.org/stage.png",
        "data:image/png;base64,AAAA",
        "link.png",
        "circle.png",
        "%2e%2e/secret.png",
        "a%00b.png",
        "x" * 5000 + ".png",
    ],
)
def test_a_picture_from_elsewhere_is_a_fault(file: ContentFile, target: str) -> None:
    assert find(file, target) == ({}, ["image-outside"])


def test_the_nearest_name_is_offered(file: ContentFile) -> None:
    _, (fault,) = find_images(file, SOURCE, [ImageUse("stag.png", "x", Span(1, 1, 1, 2))])

    assert fault.hint == 'did you mean "stage.png"?'


@pytest.mark.parametrize(
    ("name", "code"),
    [
        ("page.html", "file-kind"),
        ("page.HTM", "file-kind"),
        ("script.js", "file-kind"),
        ("stage.svgz", "file-kind"),
        ("stage.png.", "file-kind"),
        (".htaccess", "file-kind"),
        ("clip.mp4", "file-kind"),
        ("con.png", "file-name-unusable"),
        ("large.png", "file-unreadable"),
        ("live.SVG", "file-active"),
        ("stage.png", ""),
        ("a.svg", ""),
    ],
)
def test_only_a_sound_picture_is_published(file: ContentFile, name: str, code: str) -> None:
    live = "<svg xmlns='http://www.w3.org/2000/svg'>{}</svg>"
    (file.folder / name).write_text(live.format("<script/>" if "live" in name else ""))
    if "large" in name:
        os.truncate(file.folder / name, 20_000_000_000)

    assert find(file, name)[1] == ([code] if code else [])


def test_a_name_says_what_a_file_is_and_not_where_it_leads(file: ContentFile) -> None:
    (file.folder / "page.html").write_text("<script>1</script>")
    (file.folder / "page.svg").symlink_to("page.html")

    assert find(file, "page.svg")[1] == ["file-active"]


def test_a_pipe_beside_the_text_is_no_picture(file: ContentFile) -> None:
    os.mkfifo(file.folder / "pipe.png")

    assert find(file, "pipe.png")[1] == ["image-missing"]
