"""Sung words under the notes, verse by verse."""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.words import Words
from sitegen.engraving.musicxml.element import child
from sitegen.score.chart import Event

_SYLLABIC = {None: "single", "i": "begin", "m": "middle", "t": "end"}


class Lyrics:
    """The words of one voice."""

    def __init__(self, events: tuple[Event, ...]) -> None:
        self._events = events
        self._words = Words(events)

    def write(self, note: Element, number: int) -> None:
        """Write the syllables of event `number` into its note, or its chord's first."""
        for syllable in self._events[number].syllables:
            if syllable.held or not syllable.text:
                continue
            lyric = child(note, "lyric", number=syllable.verse)
            child(lyric, "syllabic", _SYLLABIC[self._words.place(number, syllable)])
            child(lyric, "text", syllable.text)
            if not syllable.joined and self._words.is_held(number, syllable):
                child(lyric, "extend")
