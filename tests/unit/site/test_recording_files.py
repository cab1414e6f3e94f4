"""The recording that the front matter names: found beside the text, or at the site's host."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.article.front import Video
from sitegen.kinds.kind import ChartKind
from sitegen.site.content import ContentFile
from sitegen.site.study import Study, study_file

PATTERN = '[recording]\nembed = "https://host.example/frame/{id}?start={seconds}"\n'
Studied = Callable[..., Study]


@pytest.fixture
def study(write_article: Callable[..., Path], claps: ChartKind) -> Studied:
    """Return what studies a write-up that has some lines under `video` and a holder."""

    def study(*lines: str, beside: str = "") -> Study:
        more = "".join(["video:\n", *(f"  {line}\n" for line in lines), "  holder: The Gantry\n"])
        path = write_article("low-tide", "Words.", more=more)
        if beside:
            (path.parent / beside).write_bytes(b"RIFF")
        return study_file(ContentFile("low-tide", path), (claps,))

    return study


def codes(study: Study) -> list[tuple[str, int, int]]:
    return [(one.code, one.span.line, one.span.column) for one in study.diagnostics]


def test_a_file_beside_the_text_is_published(study: Studied) -> None:
    found = study("file: clip.wav", beside="clip.wav")

    assert codes(found) == []
    assert set(found.files) == {"clip.wav"}


def test_a_file_that_is_not_there_is_a_fault_at_its_name(study: Studied) -> None:
    assert codes(study("file: clip.wav")) == [("recording-missing", 6, 9)]


def test_a_link_out_of_the_folder_is_no_file_beside_the_text(
    study: Studied, tmp_path: Path, content: Path
) -> None:
    (tmp_path / "private.wav").write_bytes(b"RIFF")
    folder = content / "breakdowns" / "low-tide"
    folder.mkdir(parents=True)
    (folder / "clip.wav").symlink_to(tmp_path / "private.wav")

    found = study("file: clip.wav")

    assert codes(found) == [("recording-missing", 6, 9)]
    assert found.files == {}


def test_a_name_is_put_into_the_pattern_of_the_site(study: Studied, content: Path) -> None:
    (content / "site.toml").write_text(f'title = "Side Two"\n{PATTERN}', encoding="utf-8")

    found = study("embed: low-tide")

    assert codes(found) == []
    assert found.video == Video(
        embed="https://host.example/frame/low-tide?start={seconds}", holder="The Gantry"
    )


def test_a_name_without_a_pattern_is_a_fault_and_no_frame_is_shown(study: Studied) -> None:
    found = study("embed: low-tide")

    assert codes(found) == [("recording-pattern", 6, 10)]
    assert found.video.embed == ""


def test_a_pattern_that_is_itself_at_fault_is_not_told_twice(
    study: Studied, content: Path
) -> None:
    wrong = PATTERN.replace("https", "http")
    (content / "site.toml").write_text(f'title = "Side Two"\n{wrong}', encoding="utf-8")

    assert codes(study("embed: low-tide")) == []
