"""Sung words under the notes, verse by verse: hyphens between syllables, lines under held ones."""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.element import child, put
from sitegen.score.chart import Event, Syllable


class Words:
    """The words of one voice; every syllable knows what stands before and after it."""

    def __init__(self, events: tuple[Event, ...]) -> None:
        self._events = events
        # The syllable of each verse that was sung last before an event, and the next after it.
        self._before: dict[tuple[int, int], Syllable] = {}
        self._held: set[tuple[int, int]] = set()
        last: dict[int, tuple[int, Syllable]] = {}
        for number, event in enumerate(events):
            for syllable in event.syllables:
                if syllable.held:
                    self._hold(last, syllable.verse)
                    continue
                if syllable.verse in last:
                    self._before[number, syllable.verse] = last[syllable.verse][1]
                last[syllable.verse] = (number, syllable)

    def _hold(self, last: dict[int, tuple[int, Syllable]], verse: int) -> None:
        if verse in last:
            self._held.add((last[verse][0], verse))

    def write(self, home: Element, number: int) -> None:
        """Write the syllables of event `number` into its note or chord."""
        for syllable in self._events[number].syllables:
            if syllable.held or not syllable.text:
                continue
            verse = child(home, "verse", n=syllable.verse)
            written = child(verse, "syl", wordpos=self.place(number, syllable))
            written.text = syllable.text
            if syllable.joined:
                put(written, con="d")
            elif self.is_held(number, syllable):
                put(written, con="u")

    def is_held(self, number: int, syllable: Syllable) -> bool:
        """Return whether the syllable of event `number` is held over the notes after it."""
        return (number, syllable.verse) in self._held

    def place(self, number: int, syllable: Syllable) -> str | None:
        """Return the syllable's place in its word: initial, medial, terminal; None when alone."""
        before = self._before.get((number, syllable.verse))
        follows = before is not None and before.joined
        places = {(False, True): "i", (True, True): "m", (True, False): "t"}
        return places.get((follows, syllable.joined))
