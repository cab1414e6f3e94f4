"""Engravings as files: they bring what a page would share; brackets can be left out of sight."""

import re

from unit.engraving import samples
from unit.engraving.writing import parsed

from sitegen.engraving import engrave, stand_alone

SVG = "{http://www.w3.org/2000/svg}"


def test_a_file_holds_every_glyph_that_it_uses_and_no_other() -> None:
    drawn = engrave(samples.riff(), "riff")
    root = parsed(stand_alone(drawn.narrow, drawn.glyphs).decode())
    used = {use.get("href", "") for use in root.iter(f"{SVG}use")}
    (definitions,) = root.findall(f"{SVG}defs")
    assert {f"#{glyph.get('id')}" for glyph in definitions} == used != set()


def test_a_file_asks_nobody_for_a_font() -> None:
    drawn = engrave(samples.riff(), "riff")
    addresses = re.findall(r"url\(([^)]{0,20})", stand_alone(drawn.wide, drawn.glyphs).decode())
    assert [address[:15] for address in addresses] == ["data:font/woff2"]


def test_the_drawing_in_a_file_is_the_one_of_the_page() -> None:
    drawn = engrave(samples.riff(), "riff")
    text = stand_alone(drawn.wide, drawn.glyphs).decode()
    assert text.rstrip().endswith(drawn.wide.partition(">")[2])


def test_brackets_of_labels_are_spans_of_their_own() -> None:
    root = parsed(engrave(samples.riff(), "riff").wide)
    labels = [g for g in root.iter("g") if "non-chord" in g.get("class", "").split()]
    labels = [label for label in labels if "harm" in label.get("class", "").split()]
    found = [
        [span.text for span in label.iter("tspan") if span.get("class") == "bracket"]
        for label in labels
    ]
    assert found == [["(", ")"]] * len(labels) != []
    assert all("".join(label.itertext()).endswith("3)") for label in labels)


def test_notes_of_a_chord_have_ids_only_where_they_are_to_be_found() -> None:
    plain = engrave(samples.riff(), "riff").wide
    found = engrave(samples.riff(), "riff", found={"guitar-1-1-n2"}).wide
    assert 'id="riff-guitar-1-1"' in plain
    assert 'id="riff-guitar-1-1-n2"' not in plain
    assert found.count('id="riff-guitar-1-1-n2"') == 1
    assert found.count('id="riff-guitar-1-1-tab-n2"') == 1
