"""The `song` and `video` fields of the front matter."""

from sitegen.article.front import Song, Video
from sitegen.article.front_fields import Fields
from sitegen.article.front_values import (
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
    """Return the video."""
    video = Video(
        page=fields.take("page", read_web_address, ""),
        embed=fields.take("embed", read_web_address, ""),
        file=fields.take("file", read_file_or_address, ""),
        length=fields.take("length", read_length, None),
    )
    fields.finish()
    return video
