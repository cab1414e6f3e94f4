"""Sound rendered offline by the page's own scripts, and what can be measured in it."""

import base64
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

import numpy as np
from numpy.typing import NDArray
from playwright.sync_api import Page

from sitegen.performance import Performance, PlayedBar, Player, Stroke, performance_record
from sitegen.performance.performance import Manner, Sound

Samples = NDArray[np.float64]
"""A mono signal."""
RATE = 44100

_RENDER = """
async ([sound, choices, seconds, rate, changes]) => {
  const folder = document.querySelector("script[type=module]").src.replace(/[^/]*$/, "");
  const { prepare } = await import(folder + "rehearsal.js");
  const context = new OfflineAudioContext(1, seconds * rate, rate);
  const { transport, change } = prepare(context, sound, choices);
  for (const [at, changed] of changes) {
    transport.advance(at);
    change({ ...choices, ...changed });
  }
  transport.advance(seconds);
  const buffer = await context.startRendering();
  const bytes = new Uint8Array(buffer.getChannelData(0).buffer);
  let text = "";
  for (let n = 0; n < bytes.length; n += 32768) {
    text += String.fromCharCode(...bytes.subarray(n, n + 32768));
  }
  return btoa(text);
}
"""


def choices(sound: Mapping[str, Any], **changed: object) -> dict[str, object]:
    """Return what a reader has set: all of the chart, full volume, nothing muted, no clicks."""
    numbers = [bar[0] for bar in sound["bars"]]
    plain: dict[str, object] = {
        "first": min(numbers),
        "last": max(numbers),
        "tempo": 1,
        "volume": 1,
        "heard": [True] * len(sound["players"]),
        "looping": False,
        "counting": False,
        "clicking": False,
    }
    return plain | changed


def render(
    page: Page,
    sound: Mapping[str, Any],
    seconds: float,
    changes: Sequence[tuple[float, Mapping[str, object]]] = (),
    rate: int = RATE,
    **changed: object,
) -> Samples:
    """Return `seconds` of a record; `changes` are choices that a reader alters at a time."""
    chosen = choices(sound, **changed)
    encoded = page.evaluate(_RENDER, [sound, chosen, seconds, rate, list(changes)])
    return np.frombuffer(base64.b64decode(encoded), dtype="<f4").astype(float)


def stroke(
    start: float,
    length: float,
    midi: int,
    manner: Manner = "",
    glide: int | None = None,
    loudness: float = 0.75,
) -> Stroke:
    """Return a stroke with the name of its place."""
    times = Fraction(start).limit_denominator(960), Fraction(length).limit_denominator(960)
    return Stroke(*times, midi, loudness, f"note-{start}", manner, glide)


def record(
    *players: tuple[Sound, Sequence[Stroke]], tempo: int = 60, bars: int = 4
) -> dict[str, object]:
    """Return the record of some players in bars of four quarters; at 60 a quarter is a second."""
    played = tuple(
        PlayedBar(
            n + 1, Fraction(4 * n), Fraction(4), tuple(Fraction(4 * n + k) for k in range(4))
        )
        for n in range(bars)
    )
    band = tuple(Player(sound, sound, tuple(strokes)) for sound, strokes in players)
    return performance_record(Performance(band, played, Fraction(tempo), tempo_is_given=True))


def frequency_of(midi: int) -> float:
    """Return the equal-tempered frequency, A4 = 440 Hz (ISO 16:1975)."""
    return float(440 * 2 ** ((midi - 69) / 12))


def measure_pitch(samples: Samples, near: float, rate: int = RATE) -> float:
    """Return the frequency of the strongest partial within half an octave of `near`.

    The peak of a Hann-windowed, zero-padded spectrum, with a parabola through the logarithms of
    its three highest bins (J. O. Smith, Spectral Audio Signal Processing, 2011; from memory).
    """
    size = 1 << 20
    spectrum = np.abs(np.fft.rfft(samples * np.hanning(len(samples)), size))
    low, high = (int(near * factor * size / rate) for factor in (0.71, 1.41))
    top = low + int(np.argmax(spectrum[low:high]))
    a, b, c = np.log(spectrum[top - 1 : top + 2])
    return float((top + 0.5 * (a - c) / (a - 2 * b + c)) * rate / size)


def cents(frequency: float, wanted: float) -> float:
    """Return how far a frequency lies above the one wanted."""
    return float(1200 * np.log2(frequency / wanted))


def find_onsets(samples: Samples, gap: float = 0.05, rate: int = RATE) -> Samples:
    """Return when sound begins after at least `gap` seconds of near silence, in seconds."""
    loud = np.flatnonzero(np.abs(samples) > 2e-3 * np.abs(samples).max())
    starts = np.concatenate(([True], np.diff(loud) > gap * rate))
    return loud[starts] / rate


def centroid(samples: Samples, rate: int = RATE) -> float:
    """Return the mean frequency of a signal's spectrum, weighted by energy: its brightness."""
    energy = np.abs(np.fft.rfft(samples)) ** 2
    return float(np.sum(energy * np.fft.rfftfreq(len(samples), 1 / rate)) / np.sum(energy))


def lasting(samples: Samples, rate: int = RATE) -> float:
    """Return in how many seconds nine tenths of a signal's energy have come."""
    grown = np.cumsum(samples**2)
    return float(np.searchsorted(grown, 0.9 * grown[-1])) / rate


def level(samples: Samples) -> float:
    """Return the root of the mean square."""
    return float(np.sqrt(np.mean(samples**2)))
