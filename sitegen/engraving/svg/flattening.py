"""What is drawn, written without the groups that nothing needs: what they hold moves up."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from xml.etree.ElementTree import Element

from sitegen.engraving.markup import quoted
from sitegen.engraving.svg.glyphs import Glyphs
from sitegen.engraving.svg.paths import Content, look_of
from sitegen.engraving.svg.text import text_markup

# Groups that a page can find by their ids while the music plays; the notes of a chord go with it.
_FOUND = frozenset({"note", "chord", "tabGrp", "rest", "mRest", "measure"})
_TOGETHER = frozenset({"chord", "tabGrp"})
# Groups that the style names; all others only mirror the file.
_STYLED = frozenset({"dir", "dynam", "ending", "harm", "mNum", "reh", "tempo", "label"})
_KEPT = _FOUND | _STYLED
# Groups whose words are moved out of them, so that what marks a note does not mark them.
_SUNG = frozenset({"note", "chord"})
# Half a staff space: less is no line. And how far above a syllable's foot its line may lie.
_STUMP, _NEAR_FOOT = 90, 45


@dataclass(frozen=True)
class _Inside:
    """Where an element stands: in a chord that is found as a whole, in a bracketed label."""

    together: bool = False
    bracketed: bool = False


class Flattening:
    """Writes the elements of one sheet; ids that stay get `prefix` before them.

    `found` are the ids of notes of chords that a page has to find one by one.
    """

    def __init__(self, prefix: str, found: Collection[str], glyphs: Glyphs) -> None:
        self._prefix = quoted(prefix)
        self._found = found
        self._glyphs = glyphs

    def written(self, music: Element) -> str:
        """Return the markup of everything in a group."""
        content = Content()
        self._write_all(music, content, _Inside())
        return str(content)

    def _write_all(self, parent: Element, home: Content, inside: _Inside) -> None:
        for child in parent:
            if child.tag == "g":
                for verse in self._write_group(child, home, inside):
                    self._write_all(verse, home, inside)
            else:
                self._write_shape(child, home, inside)

    def _write_shape(self, shape: Element, home: Content, inside: _Inside) -> None:
        match shape.tag:
            case "use":
                home.add(self._glyphs.written(shape))
            case "path":
                home.add_path(shape)
            case "text":
                home.add(text_markup(shape, bracketed=inside.bracketed))
            case "title":
                pass
            case name:
                home.add(f"<{name}{look_of(shape)} />")

    def _write_group(self, group: Element, home: Content, inside: _Inside) -> Sequence[Element]:
        """Write a group, or what it holds; return the verses that are to follow it."""
        classes = group.get("class", "")
        name, several, _ = classes.partition(" ")
        if "placeholder" in classes:
            return ()
        _mend(group, name)
        if name not in _KEPT:
            self._write_all(group, home, inside)
            return ()
        identity = group.get("id", "")
        alone = not inside.together or identity in self._found
        within = _within(inside, name, classes)
        if not alone and not several:
            return self._write_inner(group, name, home, within)
        content = Content()
        verses = self._write_inner(group, name, content, within)
        if content:
            found = f' id="{self._prefix}-{identity}"' if name in _FOUND and alone else ""
            home.add(f"<g{_own(group)}{found if identity else ''}>{content}</g>")
        return verses

    def _write_inner(
        self, group: Element, name: str, home: Content, inside: _Inside
    ) -> Sequence[Element]:
        """Write what a group holds; return the verses of a note or chord, the last one first."""
        if name not in _SUNG:
            self._write_all(group, home, inside)
            return ()
        verses: list[Element] = []
        for child in group:
            if child.tag != "g":
                self._write_shape(child, home, inside)
            elif child.get("class") == "verse":
                verses.append(child)
            else:
                verses += self._write_group(child, home, inside)
        return verses[::-1]


def _own(group: Element) -> str:
    """Return the attributes of a group but for its id: our own classes and places."""
    return "".join([f' {name}="{value}"' for name, value in group.items() if name != "id"])


def _within(inside: _Inside, name: str, classes: str) -> _Inside:
    """Return where the inner elements of a group stand whose `classes` begin with `name`."""
    if name in _TOGETHER:
        return _Inside(together=True, bracketed=inside.bracketed)
    if name == "harm" and "non-chord" in classes.split():
        return _Inside(inside.together, bracketed=True)
    return inside


def _mend(group: Element, name: str) -> None:
    """Take out what verovio draws too much of."""
    if name == "syl":
        _drop_stumps(group)
    elif name == "ending":
        # The bracket stays over the top staff; verovio repeats it over others.
        for bracket in group.findall("g")[1:]:
            group.remove(bracket)


def _drop_stumps(syllable: Element) -> None:
    """Remove the line after a held syllable where it is so short that it looks a full stop.

    A hyphen stands higher than the foot of its syllable, such a line on it.
    """
    text = syllable.find("text")
    if text is None:
        return
    foot = float(text.get("y", 0)) - _NEAR_FOOT
    for line in syllable.findall("rect"):
        if float(line.get("width", 0)) < _STUMP and float(line.get("y", 0)) > foot:
            syllable.remove(line)
