"""The second drawing of a chart: in files beside the page, and told in a sentence."""

from unit.charts.reading_aloud import chart_of, read

from sitegen.kinds.kind import Drawing, Surroundings
from sitegen.kinds.notation import NotationDrawing, draw_notation
from sitegen.kinds.studied import analyse_chart
from sitegen.kinds.two_ways import OtherWay


def drawn(head: str, *parts: str) -> Drawing:
    rows = [f"{part:<7} | Eb4             |" for part in parts]
    lines = ["count   | 1   2   3   4   |", "chord   | Eb              |", *rows]
    around = Surroundings("a", "Example 1")
    text = f"{head}\n\n" + "\n".join(lines)
    return draw_notation(analyse_chart(chart_of(read(text)), around), around)


def other_way(drawing: Drawing) -> OtherWay | None:
    assert isinstance(drawing.content, NotationDrawing)
    return drawing.content.other_way


def test_the_drawing_for_the_fingers_is_in_two_files_and_not_in_the_page() -> None:
    drawing = drawn("key: Eb\nguitar: capo 3", "guitar")
    other = other_way(drawing)
    assert other is not None
    assert (other.wide, other.narrow) == ("a-fingered.svg", "a-fingered-narrow.svg")
    assert {other.wide, other.narrow} <= drawing.files.keys()
    assert b'id="a-guitar-1-1"' in drawing.files[other.wide]
    assert b'id="a-narrow-guitar-1-1"' in drawing.files[other.narrow]
    assert b"as fingered" in drawing.files[other.wide]


def test_it_is_told_which_parts_change_and_to_which_key() -> None:
    other = other_way(drawn("key: Eb\nguitar: capo 3\nbass: half-step down", "guitar", "bass"))
    assert other is not None
    assert other.way == "as fingered"
    assert other.told == (
        "Shown as fingered: guitar in C major, bass in E major, and the chord names."
    )


def test_parts_in_one_key_are_told_together() -> None:
    other = other_way(drawn("key: Eb\nguitar: capo 3\nbass: capo 3", "guitar", "bass"))
    assert other is not None
    assert other.told == "Shown as fingered: guitar and bass in C major, and the chord names."


def test_what_is_only_read_in_another_key_is_called_read() -> None:
    other = other_way(drawn("key: Eb\nsax: reads in Bb", "sax", "keys"))
    assert other is not None
    assert (other.way, other.told) == ("as read", "Shown as read: sax in F major.")


def test_a_chart_at_pitch_has_one_way_only() -> None:
    drawing = drawn("key: Eb", "guitar")
    assert other_way(drawing) is None
    assert not [name for name in drawing.files if "fingered" in name]


def test_a_drawing_names_what_can_be_switched_off_in_it() -> None:
    assert drawn("key: Eb", "voice").switches == ("degrees",)
    assert drawn("key: Eb\nlabel: none\nroman: on", "voice").switches == ("numerals",)
