"""The head of an MEI file that is taken away says whose the music is, and changes nothing else."""

import os
from pathlib import Path

import pytest
from lxml import etree
from unit.engraving import samples
from unit.engraving.writing import parsed

from sitegen.engraving import write_mei
from sitegen.engraving.mei.head import with_head
from sitegen.score.credits import Credits

MEI = "{http://www.music-encoding.org/ns/mei}"
CREDITS = [
    Credits("Low Tide", "The Gantry", ("Ada Brandt", "Wim & Oko"), "The Gantry"),
    Credits("Low Tide"),
    Credits(holder="The Gantry"),
    Credits(),
]


@pytest.mark.parametrize("credits_", CREDITS)
def test_the_file_stays_valid(credits_: Credits) -> None:
    beside = Path(__file__).resolve().parents[4] / "shared" / "reference" / "mei-all-5.1.rng"
    path = Path(os.environ.get("SITEGEN_MEI_SCHEMA", beside))
    if not path.is_file():
        pytest.skip(f"no MEI schema at {path}; name one in SITEGEN_MEI_SCHEMA")
    schema = etree.RelaxNG(etree.parse(path))
    schema.assertValid(etree.fromstring(with_head(write_mei(samples.riff()), "Riff", credits_)))


def test_title_song_people_and_rights_are_told() -> None:
    root = parsed(with_head(write_mei(samples.riff()), "A & B", CREDITS[0]))
    assert root.findtext(f".//{MEI}titleStmt/{MEI}title") == "A & B"
    assert root.findtext(f".//{MEI}work/{MEI}title") == "Low Tide"
    assert [c.text for c in root.iter(f"{MEI}composer")] == ["Ada Brandt", "Wim & Oko"]
    assert root.findtext(f".//{MEI}contributor") == "The Gantry"
    assert root.findtext(f".//{MEI}useRestrict/{MEI}p") == "The song belongs to The Gantry."


def test_the_music_is_untouched() -> None:
    before = write_mei(samples.techniques())
    after = with_head(before, "Hands", CREDITS[0])
    assert before.partition("<music>")[2] == after.partition("<music>")[2] != ""
