"""The `song` and `video` fields of the front matter."""

from sitegen.article.embeds import read_embed
from sitegen.article.front import Song, Video
from sitegen.article.front_fields import Fields
from sitegen.article.front_values import (
    read_date,
    read_file_or_address,
    read_key,
    read_length,
    read_web_address,
    read_year,
)
from sitegen.score.meter import Meter
from sitegen.score.tempo import read_tempo


def read_song(fields: Fields) -> Song:
    """Return the song; the tempo's bare number counts what the meter lets it count."""
    meter = fields.take("meter", Meter.read, None)
    compound = meter is not None and meter.is_compound
    song = Song(
        title=fields.text("title"),
        artist=fields.text("artist"),
        year=fields.take("year", read_year, None),
        album=fields.text("album"),
        writers=fields.texts("writers"),
        producers=fields.texts("producers"),
        engineers=fields.texts("engineers"),
        performers=fields.texts("performers"),
        studio=fields.text("studio"),
        key=fields.take("key", read_key, None),
        tempo=fields.take("tempo", lambda text: read_tempo(text, compound=compound), None),
        meter=meter,
        tuning=fields.text("tuning"),
        length=fields.take("length", read_length, None),
    )
    fields.finish()
    return song


def read_video(fields: Fields) -> Video:
    """Return the video; one that is shown on the page should say whose it is."""
    video = Video(
        page=fields.take("page", read_web_address, ""),
        embed=fields.take("embed", read_embed, ""),
        file=fields.take("file", read_file_or_address, ""),
        length=fields.take("length", read_length, None),
        holder=fields.text("holder"),
        uploaded=fields.take("uploaded", read_date, None),
        places={
            name: fields.span_of(name) for name in ("page", "embed", "file") if fields.has(name)
        },
    )
    if (video.embed or video.file) and not video.holder:
        shown = "file" if video.file else "embed"
        message = "the page plays a recording, and nothing says whose it is"
        fields.report(fields.span_of(shown), message, code="front-holder",
                      hint="write holder: and who owns the recording")  # fmt: skip
    fields.finish()
    return video
