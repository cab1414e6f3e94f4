"""A score file parsed by music21 and brought to sounding pitch, ties joined."""
# ruff: noqa: ANN401 - music21 has no types

from typing import Any

from music21 import converter, harmony, midi, stream

from sitegen.scores.abc_text import AbcChangeError, find_unread, prepare
from sitegen.scores.losses import Losses
from sitegen.scores.unfit import UnfitScoreError

MOST_PARTS = 64


def parse(data: bytes, form: str, losses: Losses) -> list[Any]:
    """Return the parts of a score, each with bars.

    Raises UnfitScoreError; music21 may raise anything else.
    """
    found = _parse(data, form, losses)
    if isinstance(found, stream.Opus):
        if len(found.scores) != 1:
            raise UnfitScoreError("it holds several scores: keep the one you quote from")
        found = found.scores[0]
    if not isinstance(found, stream.Stream):
        raise UnfitScoreError("it holds no score")
    found.toSoundingPitch(inPlace=True)
    joined = found.stripTies()
    parts = list(joined.parts) if isinstance(joined, stream.Score) else [joined]
    if not parts:
        raise UnfitScoreError("it holds no part")
    if len(parts) > MOST_PARTS:
        raise UnfitScoreError(f"it has more than {MOST_PARTS} parts")
    return [_in_bars(part) for part in parts]


def _parse(data: bytes, form: str, losses: Losses) -> Any:
    if form == "midi":
        file = midi.MidiFile()
        file.readstr(data)
        return midi.translate.midiFileToStream(file)
    text = data.decode()
    if form != "abc":
        return converter.parseData(text, format=form)
    try:
        prepared = prepare(text)
    except AbcChangeError as wrong:
        raise UnfitScoreError(f"{wrong}, where no change is read") from wrong
    found = converter.parseData(prepared, format="abc")
    count = len(found.recurse().getElementsByClass(harmony.Harmony))
    for what in find_unread(text, count):
        losses.add(what)
    return found


def _in_bars(part: Any) -> Any:
    """Return a part with bars: a tune of a single one comes without."""
    has_bars = next(iter(part.getElementsByClass(stream.Measure)), None) is not None
    return part if has_bars or not part.notesAndRests else part.makeMeasures()
