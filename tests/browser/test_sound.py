"""What a chart's player lets sound, rendered offline by the very scripts of the page."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

import numpy as np
import pytest
from browser.opening import open_page
from browser.rendering import (
    RATE,
    Samples,
    centroid,
    cents,
    find_onsets,
    frequency_of,
    lasting,
    level,
    measure_pitch,
    record,
    render,
    stroke,
)
from playwright.sync_api import Browser, Page
from unit.charts.reading_aloud import chart_of, read

from sitegen.performance import Performance, perform, performance_record
from sitegen.performance.performance import Manner, Sound
from sitegen.score.drums import KIT

pytestmark = pytest.mark.browser

CENTS = 5
SECONDS = 0.005
LEAD_IN = 0.1
"""Seconds of the clock before the first note."""

# From the lowest string or key to as high as each is played, E1 = 28 to E6 = 88.
PITCHES: list[tuple[Sound, list[int]]] = [
    ("bass", [23, 28, 33, 40, 47, 55, 67]),
    ("guitar", [37, 40, 45, 52, 59, 64, 69, 76, 83, 88]),
    ("voice", [40, 52, 60, 64, 76, 88]),
    ("keys", [28, 40, 52, 64, 76, 88]),
    ("reed", [49, 58, 64, 76, 88]),
    ("chords", [36, 43, 52, 60, 64]),
]


@pytest.fixture(scope="module")
def page(browser: Browser, site: tuple[str, list[str]]) -> Iterator[Page]:
    top, paths = site
    path = next(path for path in paths if path.startswith("breakdowns/"))
    page = open_page(browser, top + path, 1280)
    yield page
    page.context.close()


def one_note(
    page: Page,
    sound: Sound,
    midi: int,
    manner: Manner = "",
    length: float = 1.0,
    loud: float = 0.75,
) -> Samples:
    """Return a note from its onset on, with a silence after it."""
    sounding = record((sound, [stroke(0.9, length, midi, manner, loudness=loud)]))
    return render(page, sounding, length + 2)[int((LEAD_IN + 0.9) * RATE) :]


@pytest.mark.parametrize("rate", [44100, 48000])
@pytest.mark.parametrize(("sound", "pitches"), PITCHES)
def test_every_instrument_is_in_tune(
    page: Page, sound: Sound, pitches: list[int], rate: int
) -> None:
    # 0.6 quarters: a voice has no vibrato before that.
    notes = [stroke(n, 0.6, midi) for n, midi in enumerate(pitches)]
    samples = render(page, record((sound, notes)), len(pitches) + 1, rate=rate)
    for n, midi in enumerate(pitches):
        start = int((LEAD_IN + n + 0.06) * rate)
        heard = samples[start : start + int(0.5 * rate)]
        pitch = measure_pitch(heard, frequency_of(midi), rate)
        assert abs(cents(pitch, frequency_of(midi))) < CENTS, midi


def test_a_pitch_that_is_off_is_found(page: Page) -> None:
    heard = one_note(page, "guitar", 64)[:RATE]
    slower = np.interp(np.arange(RATE) * 2 ** (8 / 1200), np.arange(RATE), heard)
    assert cents(measure_pitch(slower, frequency_of(64)), frequency_of(64)) > CENTS


def test_vibrato_stays_around_the_pitch(page: Page) -> None:
    heard = one_note(page, "voice", 64, length=3)
    pieces = [heard[n : n + RATE // 10] for n in range(RATE, 5 * RATE // 2, RATE // 50)]
    found = [cents(measure_pitch(piece, frequency_of(64)), frequency_of(64)) for piece in pieces]
    assert 4 < max(found) < 25
    assert -25 < min(found) < -4
    assert abs(np.mean(found)) < CENTS


@pytest.mark.parametrize("sound", ["guitar", "bass", "voice", "keys", "reed", "chords", "drums"])
def test_notes_begin_when_the_score_says(page: Page, sound: Sound) -> None:
    starts = [0, 1, 1.75, 2.5, 3 + 1 / 3, 4]
    notes = [stroke(start, 0.2, 42 if sound == "drums" else 52) for start in starts]
    onsets = find_onsets(render(page, record((sound, notes)), 6))
    assert len(onsets) == len(starts)
    assert np.abs(onsets - onsets[0] - starts).max() < SECONDS
    assert abs(onsets[0] - LEAD_IN) < SECONDS


def sounding(text: str) -> Performance:
    return perform(chart_of(read(text)))


SWUNG = """
    tempo: 120
    feel: swing
    meter: 4/4
    count | 1   &   2   &   3   &   4   &   |
    drums
      HH  | x   x   x   x   x       x   x   |
"""


def test_swing_is_heard_long_and_short(page: Page) -> None:
    performance = sounding(SWUNG)
    onsets = find_onsets(render(page, performance_record(performance), 3))
    # Two to one: the second eighth of a beat comes after two thirds of it.
    beats = [Fraction(n, 3) for n in (0, 2, 3, 5, 6, 9, 11)]
    wanted = [float(beat) * 60 / 120 for beat in beats]
    assert np.abs(onsets - onsets[0] - wanted).max() < SECONDS


@pytest.mark.parametrize("tempo", [0.4, 0.75, 1.2])
def test_another_tempo_keeps_the_pitch(page: Page, tempo: float) -> None:
    notes = [stroke(n, 0.4, 52) for n in range(3)]
    for sound in ("guitar", "voice"):
        samples = render(page, record((sound, notes)), 3 / tempo + 1, tempo=tempo)
        onsets = find_onsets(samples)
        assert np.abs(np.diff(onsets) - 1 / tempo).max() < SECONDS
        start = int((onsets[1] + 0.05) * RATE)
        heard = samples[start : start + int(0.25 * RATE)]
        assert abs(cents(measure_pitch(heard, frequency_of(52)), frequency_of(52))) < CENTS


def test_a_tempo_changed_on_the_way_neither_skips_nor_repeats(page: Page) -> None:
    hats = record(("drums", [stroke(n, 0.2, 42) for n in range(8)]))
    samples = render(page, hats, 13, changes=[(2.6, {"tempo": 0.5})])
    onsets = find_onsets(samples) - LEAD_IN
    # All until 2.6 s is given away: from there, 2.5 quarters in, a quarter lasts two seconds.
    wanted = [0, 1, 2, *(2.5 + 2 * (n - 2.5) for n in range(3, 8))]
    assert np.abs(onsets - wanted).max() < SECONDS


@pytest.mark.parametrize("sound", ["guitar", "bass", "voice"])
def test_a_bend_reaches_its_pitch(page: Page, sound: Sound) -> None:
    bent = record((sound, [stroke(0, 1.2, 57, glide=59), stroke(2, 1.2, 57, glide=52)]))
    samples = render(page, bent, 4)
    for start, goal in ((0, 59), (2, 52)):
        early, late = (
            samples[int((LEAD_IN + start + at) * RATE) :][: int(length * RATE)]
            for at, length in ((0.02, 0.14), (0.65, 0.5))
        )
        assert abs(cents(measure_pitch(early, frequency_of(57)), frequency_of(57))) < 20
        # A voice trembles a little by then.
        allowed = 3 * CENTS if sound == "voice" else CENTS
        assert abs(cents(measure_pitch(late, frequency_of(goal)), frequency_of(goal))) < allowed


@pytest.mark.parametrize("sound", ["guitar", "bass"])
@pytest.mark.parametrize("manner", ["dead", "palm mute"])
def test_muffled_strings_are_shorter_and_duller(page: Page, sound: Sound, manner: Manner) -> None:
    plain, muffled = (one_note(page, sound, 45, way) for way in ("", manner))
    assert lasting(muffled) < 0.6 * lasting(plain)
    assert centroid(muffled) < 0.8 * centroid(plain)


def test_a_dead_note_is_shorter_than_a_palm_muted_one(page: Page) -> None:
    dead, muted = (one_note(page, "guitar", 45, way) for way in ("dead", "palm mute"))
    assert lasting(dead) < 0.5 * lasting(muted)


@pytest.mark.parametrize(("sound", "midi"), [("guitar", 52), ("drums", 38)])
def test_a_ghost_note_is_softer_and_duller(page: Page, sound: Sound, midi: int) -> None:
    plain, ghost = one_note(page, sound, midi), one_note(page, sound, midi, "ghost", loud=0.35)
    assert level(ghost) < 0.5 * level(plain)
    assert centroid(ghost) < 0.8 * centroid(plain)


def test_a_joined_note_has_no_new_attack(page: Page) -> None:
    plain, joined = one_note(page, "guitar", 57), one_note(page, "guitar", 57, "joined")
    first = slice(0, int(0.005 * RATE))
    assert level(joined[first]) < 0.3 * level(plain[first])
    assert centroid(joined) < 0.8 * centroid(plain)


def test_what_rings_outlasts_its_length(page: Page) -> None:
    plain, ringing = (one_note(page, "guitar", 52, way, 0.5) for way in ("", "let ring"))
    after = slice(RATE, 3 * RATE // 2)
    assert level(ringing[after]) > 20 * level(plain[after])


def test_a_harmonic_is_purer_than_a_stopped_note(page: Page) -> None:
    plain, harmonic = (one_note(page, "guitar", 64, way) for way in ("", "harmonic"))
    assert centroid(harmonic) < 0.7 * centroid(plain)


def test_a_flam_has_a_soft_stroke_before_the_beat(page: Page) -> None:
    plain, flam = (
        render(page, record(("drums", [stroke(1, 0.25, 38, way)])), 2) for way in ("", "flam")
    )
    assert find_onsets(plain)[0] - find_onsets(flam)[0] == pytest.approx(0.03, abs=SECONDS)
    before, after = (int((LEAD_IN + 1 + at) * RATE) for at in (-0.03, 0))
    assert level(flam[before:after]) < 0.6 * level(flam[after : after + 1000])


def test_a_roll_goes_on_for_its_length(page: Page) -> None:
    plain, roll = (one_note(page, "drums", 38, way, length=1.5) for way in ("", "roll"))
    late = slice(int(1.2 * RATE), int(1.45 * RATE))
    assert level(plain[late]) < 1e-4
    assert level(roll[late]) > 0.2 * level(roll[: RATE // 4])
    assert level(roll[int(1.8 * RATE) :]) < 1e-4


def test_drums_differ_from_low_to_high(page: Page) -> None:
    # Bass drum, floor tom, snare, closed hi-hat: as low to high as on any kit (common practice).
    brightness = [centroid(one_note(page, "drums", midi)) for midi in (36, 43, 38, 42)]
    assert brightness == sorted(brightness)
    assert brightness[0] < 150
    assert brightness[-1] > 6000


def test_every_drum_of_the_kit_has_a_sound_of_its_own(page: Page) -> None:
    numbers = sorted({midi for drum in KIT.values() for midi in (drum.midi, drum.open_midi)})
    kit = record(("drums", [stroke(n, 1, midi) for n, midi in enumerate(numbers)]), bars=5)
    samples = render(page, kit, len(numbers) + 1)
    pieces = [samples[int((LEAD_IN + n) * RATE) :][: RATE // 2] for n in range(len(numbers))]
    assert min(level(piece) for piece in pieces) > 1e-3
    # All noise is the same noise, so that like drums would be alike sample by sample.
    for one, other in combinations(pieces, 2):
        assert level(one - other) > 0.1 * max(level(one), level(other))


def test_the_foot_ends_an_open_hat(page: Page) -> None:
    open_hat = stroke(0, 1, 46)
    alone = render(page, record(("drums", [open_hat])), 2)
    closed = render(page, record(("drums", [open_hat, stroke(0.25, 0.25, 44)])), 2)
    late = slice(int((LEAD_IN + 0.4) * RATE), int((LEAD_IN + 0.6) * RATE))
    assert level(closed[late]) < 0.1 * level(alone[late])


def test_the_loudest_band_stays_below_full_scale(page: Page) -> None:
    chord = [stroke(0, 2, midi, loudness=1) for midi in (40, 45, 50, 55, 59, 64)]
    kit = [stroke(0, 1, midi, loudness=1) for midi in (36, 38, 46, 49, 51)]
    full: list[Sound] = ["guitar", "guitar", "keys", "voice", "reed", "bass", "chords"]
    loud = record(*((sound, chord) for sound in full), ("drums", kit))
    samples = render(page, loud, 3, clicking=True)
    assert 0.5 < np.abs(samples).max() < 1


def test_it_starts_softly(page: Page) -> None:
    twice = record(("reed", [stroke(0, 0.5, 57), stroke(3, 0.5, 57)]))
    samples = render(page, twice, 5)
    assert np.abs(np.diff(samples)).max() < 0.05
    first, later = (level(samples[int((LEAD_IN + at) * RATE) :][: RATE // 10]) for at in (0, 3))
    assert 0.1 * later < first < 0.7 * later


def test_half_the_volume_is_a_quarter_of_the_height(page: Page) -> None:
    held = record(("reed", [stroke(0, 4, 57)]))
    loud, low = (render(page, held, 2, volume=volume) for volume in (1, 0.5))
    assert level(low) == pytest.approx(level(loud) / 4, rel=0.01)


def test_what_is_not_heard_is_silent(page: Page) -> None:
    low, high = [stroke(0, 2, 40)], [stroke(0, 2, 76)]
    both = record(("bass", low), ("voice", high))
    only_bass = render(page, both, 2, heard=[True, False])
    alone = render(page, record(("bass", low)), 2)
    assert np.abs(only_bass - alone).max() < 1e-6
    assert level(render(page, both, 2, heard=[False, False])) == 0


def test_a_change_of_parts_is_heard_at_once(page: Page) -> None:
    held = record(("reed", [stroke(0, 4, 57)]))
    # Offline, all choices are made before the first sample: the last one counts.
    assert level(render(page, held, 2, changes=[(0, {"heard": [False]})])) < 1e-4


def test_a_bar_is_counted_in_and_clicks_go_on_where_asked(page: Page) -> None:
    hat = record(("drums", [stroke(0, 0.2, 42)]), bars=1)
    counted = find_onsets(render(page, hat, 10, counting=True)) - LEAD_IN
    assert np.abs(counted - np.arange(5)).max() < SECONDS
    clicked = find_onsets(render(page, hat, 10, counting=True, clicking=True)) - np.float64(
        LEAD_IN
    )
    assert np.abs(clicked - np.arange(8)).max() < SECONDS


def test_a_range_of_bars_is_played_and_looped_without_a_seam(page: Page) -> None:
    hats = record(("drums", [stroke(n, 0.2, 42 if n % 4 else 36) for n in range(16)]))
    once = find_onsets(render(page, hats, 12, first=2, last=2)) - LEAD_IN
    assert np.abs(once - np.arange(4)).max() < SECONDS
    looped = find_onsets(render(page, hats, 12, first=2, last=2, looping=True))
    assert np.abs(np.diff(looped) - 1).max() < SECONDS
    assert len(looped) == 12


def test_a_note_held_past_the_range_ends_with_it(page: Page) -> None:
    held = record(("reed", [stroke(0, 16, 57)]))
    samples = render(page, held, 6, first=1, last=1)
    assert level(samples[int(4.6 * RATE) :]) < 1e-4
