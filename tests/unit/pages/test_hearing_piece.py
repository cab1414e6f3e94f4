"""The controls of a chart that sounds, as the theme writes them before any script runs."""

import json
import re
from collections.abc import Mapping
from dataclasses import replace

import pytest

from sitegen.pages.theme import Theme
from sitegen.pages.views import ChartView

SOUND: Mapping[str, object] = {
    "tempo": 90,
    "given": False,
    "bars": [[0, 0, 1, [0]], [1, 1, 4, [1, 2, 3, 4]], [2, 5, 4, [5, 6, 7, 8]], [1, 9, 4, [9]]],
    "players": [
        {"name": "guitar 2", "sound": "guitar", "on": True, "notes": [[0, 1, 52, 0.75, "a-0-4"]]},
        {"name": "chords", "sound": "chords", "on": False, "notes": []},
    ],
}


def rendered(theme: Theme, chart: ChartView, **changed: object) -> str:
    assert chart.drawing is not None
    return theme.render_chart(
        replace(chart, drawing=replace(chart.drawing, sound={**SOUND, **changed}))
    )


@pytest.fixture
def chart(charts: dict[str, ChartView]) -> ChartView:
    return charts["engraved"]


def test_a_chart_without_sound_has_no_controls(theme: Theme, chart: ChartView) -> None:
    assert "hearing" not in theme.render_chart(chart)
    assert "hearing" not in rendered(theme, chart, bars=[])


def test_controls_wait_for_their_script(theme: Theme, chart: ChartView) -> None:
    assert '<fieldset class="hearing control" hidden>' in rendered(theme, chart)


def test_each_bar_can_be_chosen_once_and_all_are_at_first(theme: Theme, chart: ChartView) -> None:
    first, last = re.findall(r"<select.*?</select>", rendered(theme, chart))
    for select, chosen in ((first, "0"), (last, "2")):
        assert re.findall(r'value="(\d)"', select) == ["0", "1", "2"]
        assert re.findall(r'value="(\d)" selected', select) == [chosen]
        assert ">pickup<" in select


def test_a_tempo_that_the_chart_does_not_give_is_said(theme: Theme, chart: ChartView) -> None:
    words = "Played at 90, the chart gives no tempo."
    assert words in rendered(theme, chart)
    assert words not in rendered(theme, chart, given=True)


def test_every_part_can_be_muted_and_heard_alone(theme: Theme, chart: ChartView) -> None:
    html = rendered(theme, chart)
    assert re.findall(r'name="mute" aria-pressed="(\w+)"', html) == ["false", "true"]
    assert re.findall(r'name="solo" aria-pressed="(\w+)"', html) == ["false", "false"]
    assert "<li>Guitar 2" in html


def test_a_caution_about_level_stands_with_the_controls(theme: Theme, chart: ChartView) -> None:
    assert "Set the volume low before you start" in rendered(theme, chart)


def test_the_page_carries_the_record(theme: Theme, chart: ChartView) -> None:
    (text,) = re.findall(r'class="chart-sound">(.*?)</script>', rendered(theme, chart))
    assert json.loads(text) == SOUND


def test_a_hostile_part_name_stays_text(theme: Theme, chart: ChartView) -> None:
    hostile = "</script><img src=x>'\"{{ 7 * 7 }}"
    players = [{"name": hostile, "sound": "voice", "on": True, "notes": []}]
    html = rendered(theme, chart, players=players)
    assert html.count("</script>") == 1
    assert "<img" not in html
    (text,) = re.findall(r'class="chart-sound">(.*?)</script>', html)
    assert json.loads(text)["players"] == players
