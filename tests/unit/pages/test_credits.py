"""The credits of a song, as rows."""

from dataclasses import replace

from sitegen.article.front import Song
from sitegen.pages.credits import (
    Credit,
    byline,
    label_facts,
    musical_facts,
    recording_facts,
    song_credits,
)
from sitegen.pages.views import ArticleView
from sitegen.score.tempo import read_tempo


def test_nothing_is_said_of_an_unknown_song() -> None:
    assert song_credits(Song()) == ()
    assert recording_facts(Song()) == ()
    assert musical_facts(Song()) == ()
    assert label_facts(Song()) is None


def test_credits_keep_one_line_for_each_player(article: ArticleView) -> None:
    players = Credit("Played by", ("Tom Ostrander, bass", "Ib Sørgaard, drums"))
    assert players in song_credits(article.front.song)


def test_the_recording_has_its_figures(article: ArticleView) -> None:
    rows = {credit.name: credit.texts for credit in recording_facts(article.front.song)}
    assert rows == {
        "Song": ("Low Tide",),
        "Album": ("Brackish",),
        "Year": ("2011",),
        "Length": ("4:12",),
        "Key": ("E♭ minor",),
        "Tempo": ("quarter = 96",),
        "Meter": ("4/4",),
        "Tuning": ("half-step down",),
    }


def test_the_label_leaves_out_what_is_not_known() -> None:
    label = label_facts(Song(tempo=read_tempo("dotted quarter = 54.5")))
    assert label is not None
    assert (label.key, label.tempo, label.meter, label.length) == ("", "54.5 bpm", "", "")


def test_the_byline_names_writer_day_and_revision(
    article: ArticleView, bare_article: ArticleView
) -> None:
    days = "4\N{NO-BREAK SPACE}May 2026; revised 1\N{NO-BREAK SPACE}June 2026"
    assert byline(article) == f"By Ines Calloway, {days}"
    unsigned = replace(article, site=replace(article.site, author=""))
    assert byline(unsigned) == days
    assert byline(bare_article) == ""
