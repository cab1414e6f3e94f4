"""Moments of a recording as links, and how the page plays it."""

from dataclasses import replace

import pytest

from sitegen.article.front import Moment, Video
from sitegen.figures.form_plan import PlanContent, PlanRow
from sitegen.pages.views import Link, RecordingView, TimeLink
from sitegen.site.moments import moment_href, moment_links, section_links
from sitegen.site.recording import recording_view

PAGE = "https://watch.example/7"
FRAME = "https://host.example/frame/7?start={seconds}"
FILE = "clips/low tide.wav"


# W3C, Media Fragments URI 1.0 (2012), 4.2.1: "#t=10" is the media from second 10 on.
@pytest.mark.parametrize(
    ("video", "href"),
    [
        (Video(page=PAGE), f"{PAGE}#t=83"),
        (Video(page=PAGE, file=FILE, embed=FRAME), f"{PAGE}#t=83"),
        (Video(page=f"{PAGE}#top"), f"{PAGE}#t=83"),
        (Video(file=FILE, embed=FRAME), "clips/low%20tide.wav#t=83"),
        (Video(file="https://files.example/a%20b.wav"), "https://files.example/a%20b.wav#t=83"),
        (Video(embed=FRAME), "https://host.example/frame/7?start=83"),
        (Video(), ""),
    ],
)
def test_a_moment_is_a_fragment_of_page_or_file_else_what_the_host_takes(
    video: Video, href: str
) -> None:
    assert moment_href(video, 83) == href
    assert moment_href(video, 83.9) == href


def test_the_moments_of_the_front_matter_are_links_where_something_plays() -> None:
    moments = (Moment(18, "The voice enters"),)

    assert moment_links(Video(page=PAGE), moments) == (
        TimeLink("0:18 The voice enters", f"{PAGE}#t=18", 18),
    )
    assert moment_links(Video(), moments) == ()


def test_each_section_of_a_plan_leads_to_its_start() -> None:
    row = PlanRow("A", "Verse", "", "4", "about 0:13", "0:10", begin=12.5, end=22.5)
    plan = PlanContent("", "", (row, replace(row, begin=None, end=None)), ())

    assert section_links(Video(page=PAGE), plan) == (
        TimeLink("about 0:13", f"{PAGE}#t=12", 12.5),
        None,
    )
    assert section_links(Video(), plan) == ()
    assert section_links(Video(page=PAGE), "an engraving") == ()


@pytest.mark.parametrize(
    ("video", "view"),
    [
        (Video(file=FILE), RecordingView("audio", "clips/low%20tide.wav")),
        (
            Video(file="a.webm", page=PAGE, embed=FRAME),
            RecordingView("video", "a.webm", "", Link("watch.example", PAGE)),
        ),
        (
            Video(file="https://files.example/a.OGG?x=1"),
            RecordingView(
                "audio",
                "https://files.example/a.OGG?x=1",
                "files.example",
                Link("files.example", "https://files.example/a.OGG?x=1"),
            ),
        ),
        (
            Video(embed=FRAME, page=PAGE),
            RecordingView("frame", FRAME, "host.example", Link("watch.example", PAGE)),
        ),
        (
            Video(embed=FRAME),
            RecordingView(
                "frame",
                FRAME,
                "host.example",
                Link("host.example", "https://host.example/frame/7?start=0"),
            ),
        ),
        (Video(page=PAGE), None),
        (Video(), None),
    ],
)
def test_a_file_is_preferred_to_a_frame_and_another_host_is_named(
    video: Video, view: RecordingView | None
) -> None:
    assert recording_view(video) == view
