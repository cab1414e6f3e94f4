"""What somebody sees who has a page open while the site is written."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from unit.preview.conftest import Serve, Write
from unit.site.conftest import CLAPS as KIND

from sitegen.diagnostics import draw_frame
from sitegen.preview.jobs import PageJob, TopJob
from sitegen.site.content import scan_content
from sitegen.site.study import study_file

CLAPS = "```claps\nid: one\nx x x\n```\n"
BAD = "```claps\nid: one\nx ? x\n```\n"
TIDE = "/breakdowns/low-tide/"

State = dict[str, Any]


def is_clean(state: State) -> bool:
    return bool(state["faults"] == [])


def has_faults(state: State) -> bool:
    return bool(state["faults"])


def differs(before: State) -> Callable[[State], bool]:
    return lambda state: bool(state["page"] != before["page"])


def made(before: State) -> bool:
    return before["page"] not in {"never made", "not there"}


def test_a_save_makes_the_page_again(preview: Serve, write: Write) -> None:
    write("low-tide", "The first words.")
    with preview() as site, site.follow(TIDE) as page:
        assert "The first words." in site.get(TIDE)[1]
        first = page.until(made)
        write("low-tide", "The second words.")
        second = page.until(differs(first))

        assert second["faults"] == []
        text = site.get(TIDE)[1]

    assert "The second words." in text
    assert f'data-state="{second["page"]}"' in text


def test_a_prose_edit_makes_one_page_and_nothing_else(preview: Serve, write: Write) -> None:
    for slug in ("high-water", "low-tide", "slack"):
        write(slug, CLAPS)
    with preview() as site, site.follow(TIDE) as page:
        site.get("/")
        for slug in ("high-water", "low-tide", "slack"):
            site.get(f"/breakdowns/{slug}/")
        first = page.until(made)
        site.asked.clear()
        write("low-tide", f"More prose.\n\n{CLAPS}")
        page.until(differs(first))

        asked = list(site.asked)

    addresses = [job.sheet.file.slug for job in asked if isinstance(job, PageJob)]
    assert addresses == ["low-tide"]
    assert not any(isinstance(job, TopJob) for job in asked)


def test_a_fault_stands_over_the_last_good_page_until_it_is_mended(
    preview: Serve, write: Write, content: Path
) -> None:
    write("low-tide", f"Good words.\n\n{CLAPS}")
    with preview() as site, site.follow(TIDE) as page:
        good = page.until(made)
        write("low-tide", f"Bad words.\n\n{BAD}")
        bad = page.until(has_faults)
        shown = site.get(TIDE)[1]
        (file,) = scan_content(content).articles
        frames = [draw_frame(found) for found in study_file(file, (KIND,)).diagnostics]
        write("low-tide", f"Good words.\n\n{CLAPS}")
        mended = page.until(is_clean)

    assert bad["faults"] == frames
    assert "article.md:11:" in frames[0]
    assert bad["page"] == good["page"]
    assert "Good words." in shown
    assert mended["page"] == good["page"]


def test_what_was_never_good_is_shown_bare_and_then_whole(preview: Serve, write: Write) -> None:
    path = write("low-tide")
    path.write_bytes(b"---\ntitle: [\n---\n\n```claps\n?\n")
    with preview() as site, site.follow(TIDE) as page:
        status, text = site.get(TIDE)
        page.until(has_faults)
        write("low-tide", "At last.")
        state = page.until(is_clean)
        after = site.get(TIDE)[1]

    assert status == 200
    assert "article.md:" in text
    assert "At last." in after
    assert f'data-state="{state["page"]}"' in after


def test_drafts_are_shown_and_marked(preview: Serve, write: Write) -> None:
    write("low-tide", status="draft")
    write("slack", status="published")
    with preview() as site:
        marked, plain = site.get(TIDE)[1], site.get("/breakdowns/slack/")[1]

    assert "DRAFT" in marked
    assert "DRAFT" not in plain


def test_a_removed_write_up_is_gone_and_may_come_back(
    preview: Serve, write: Write, content: Path
) -> None:
    path = write("low-tide")
    with preview() as site, site.follow(TIDE) as page:
        page.until(made)
        path.unlink()
        page.until(lambda state: state["page"] == "not there")
        gone = site.get(TIDE)[0]
        write("low-tide", "Back again.")
        page.until(made)
        status, text = site.get(TIDE)

    assert gone == 404
    assert status == 200
    assert "Back again." in text
    assert content.is_dir()


def test_a_renamed_write_up_moves(preview: Serve, write: Write) -> None:
    path = write("low-tide", "Moving words.")
    with preview() as site, site.follow("/breakdowns/high-water/") as page:
        site.get(TIDE)
        path.parent.rename(path.parent.with_name("high-water"))
        page.until(made)
        old, new = site.get(TIDE)[0], site.get("/breakdowns/high-water/")[1]

    assert old == 404
    assert "Moving words." in new


def test_a_new_write_up_is_listed_and_linked_from_its_neighbour(
    preview: Serve, write: Write
) -> None:
    write("low-tide", title="Low tide")
    with preview() as site, site.follow(TIDE) as page, site.follow("/") as top:
        before, listed = page.until(made), top.until(made)
        write("slack", title="Slack water")
        page.until(differs(before))
        top.until(differs(listed))
        text, archive = site.get(TIDE)[1], site.get("/")[1]

    assert "../../breakdowns/slack/index.html" in text
    assert "Slack water" in archive


def test_a_link_to_what_is_removed_becomes_a_fault(preview: Serve, write: Write) -> None:
    path = write("slack")
    write("low-tide", "See [the other](../slack/).")
    with preview() as site, site.follow(TIDE) as page:
        site.get(TIDE)
        page.until(made)
        path.unlink()
        state = page.until(has_faults)

    assert "link-nowhere" in state["faults"][0]


def test_settings_are_picked_up(preview: Serve, write: Write, content: Path) -> None:
    write("low-tide")
    (content / "pages" / "about.md").write_text(
        "---\ntitle: About\nsummary: Who.\nmenu: Us\n---\n\nHello.\n", encoding="utf-8"
    )
    settings = content / "site.toml"
    with preview() as site, site.follow(TIDE) as page:
        page.until(made)
        page_with_menu = site.get(TIDE)[1]
        before = {"page": page_with_menu.partition('data-state="')[2].partition('"')[0]}
        settings.write_text(f"{settings.read_text()}menu = []\n", encoding="utf-8")
        page.until(differs(before))
        after = site.get(TIDE)[1]

    assert 'class="menu"' in page_with_menu
    assert 'class="menu"' not in after


def test_broken_settings_leave_the_site_as_it_was(
    preview: Serve, write: Write, content: Path
) -> None:
    write("low-tide", "Words that stay.")
    settings = content / "site.toml"
    text = settings.read_text()
    with preview() as site, site.follow(TIDE) as page:
        page.until(made)
        settings.write_text(f"{text}tagline = [\n", encoding="utf-8")
        state = page.until(has_faults)
        shown = site.get(TIDE)[1]
        settings.write_text(text, encoding="utf-8")
        page.until(is_clean)

    assert "site.toml:" in state["faults"][0]
    assert "Words that stay." in shown


def test_a_theme_is_picked_up(preview: Serve, write: Write, theme: Path) -> None:
    write("low-tide")
    with preview() as site, site.follow(TIDE) as page:
        before = page.until(made)
        (theme / "styles" / "1.css").write_text("p { color: navy }\n", encoding="utf-8")
        page.until(differs(before))
        text = site.get(TIDE)[1]
        name = text.partition("styles/")[2].partition('"')[0]
        style = site.get(f"/styles/{name}")

    assert style[0] == 200
    assert style[1].startswith("p{color:navy}")


def test_a_broken_theme_is_told_by_its_line_and_keeps_the_page(
    preview: Serve, write: Write, theme: Path
) -> None:
    write("low-tide", "Words that stay.")
    path = theme / "pages" / "article.html"
    good = path.read_text(encoding="utf-8")
    with preview() as site, site.follow(TIDE) as page:
        page.until(made)
        path.write_text(f"{good}\n{{% block %}}", encoding="utf-8")
        state = page.until(has_faults)
        status, shown = site.get(TIDE)
        path.write_text(good, encoding="utf-8")
        page.until(is_clean)

    assert "article.html:2: error: " in state["faults"][0]
    assert "{% block %}" in state["faults"][0]
    assert status == 200
    assert "Words that stay." in shown


def test_a_removed_theme_and_content_folder_leave_the_server_up(
    preview: Serve, write: Write, theme: Path, content: Path
) -> None:
    write("low-tide", "Words that stay.")
    with preview() as site, site.follow(TIDE) as page:
        page.until(made)
        theme.rename(theme.with_name("away"))
        page.until(has_faults)
        shown = site.get(TIDE)
        theme.with_name("away").rename(theme)
        page.until(is_clean)
        content.rename(content.with_name("elsewhere"))
        page.until(lambda state: state["page"] == "not there")
        gone = site.get(TIDE)[0]
        content.with_name("elsewhere").rename(content)
        page.until(lambda state: made(state) and is_clean(state))
        back = site.get(TIDE)

    assert shown[0] == 200
    assert "Words that stay." in shown[1]
    assert gone == 404
    assert back[0] == 200


def test_warnings_are_told_quietly(preview: Serve, write: Write) -> None:
    write("slack", "# A heading as large as the title")
    with preview() as site, site.follow("/breakdowns/slack/") as page:
        state = page.until(made)

    assert state["faults"] == []
    assert state["quietly"] == "1 warning"
    assert "warning[heading-level]" in state["quiet"][0]


def test_the_archive_tells_every_fault(preview: Serve, write: Write) -> None:
    write("low-tide", BAD)
    write("slack", BAD)
    with preview() as site, site.follow("/") as page:
        state = page.until(lambda one: len(one["faults"]) == 2)

    assert "low-tide" in state["faults"][0]
    assert "slack" in state["faults"][1]


@pytest.mark.parametrize("name", ["stage.svg", "stage%2Esvg"])
def test_a_picture_is_shown_from_where_it_is_and_followed(
    name: str, preview: Serve, write: Write, content: Path
) -> None:
    picture = content / "breakdowns" / "low-tide" / "stage.svg"
    picture.parent.mkdir()
    picture.write_text("<svg/>", encoding="utf-8")
    write("low-tide", "![The stage](stage.svg)")
    with preview() as site, site.follow(TIDE) as page:
        before = page.until(made)
        first = site.get(f"{TIDE}{name}")
        picture.write_text("<svg><!-- new --></svg>", encoding="utf-8")
        page.until(differs(before))
        second = site.get(f"{TIDE}{name}")
        picture.unlink()
        picture.symlink_to(content / "site.toml")
        led_away = site.get(f"{TIDE}{name}")[0]

    assert first == (200, "<svg/>")
    assert second == (200, "<svg><!-- new --></svg>")
    assert led_away == 404
