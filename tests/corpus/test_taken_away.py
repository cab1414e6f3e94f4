"""Every chart of the demo site: its MusicXML is valid and says what the chart says."""

from pathlib import Path

import pytest
from lxml import etree
from unit.engraving.reading_musicxml import assert_says_the_same, load_schema

from sitegen.analysis.reading import ChartReading
from sitegen.engraving.musicxml import write_musicxml
from sitegen.kinds import KINDS
from sitegen.site.content import ContentFile, scan_content
from sitegen.site.study import study_file

FOUND = scan_content(Path(__file__).parents[2] / "content")
FILES = (*FOUND.articles, *FOUND.pages)


def charts(file: ContentFile) -> list[ChartReading]:
    analyses = [chart.analysis for chart in study_file(file, KINDS).charts]
    values = [analysis.value for analysis in analyses if analysis is not None]
    return [value for value in values if isinstance(value, ChartReading)]


def test_there_is_something_to_take_away() -> None:
    assert sum(len(charts(file)) for file in FILES) >= 12


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.slug)
def test_every_chart_is_read_back(file: ContentFile) -> None:
    for reading in charts(file):
        text = write_musicxml(reading)
        load_schema().assertValid(etree.fromstring(text.encode()))
        assert_says_the_same(text, reading.chart)
