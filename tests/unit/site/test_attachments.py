"""Pictures lie in the write-up's own folder, and nothing else is published with it."""

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
