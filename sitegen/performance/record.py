"""A performance in the compact form that a page carries for its player."""

from fractions import Fraction

from sitegen.performance.performance import Performance, Player, Stroke


def performance_record(performance: Performance) -> dict[str, object]:
    """Return a record for JSON; times are quarter notes as numbers, four decimals.

    - `tempo`: quarters a minute; `given`: whether the chart states it
    - `bars`: `[number, start, length, [clicks]]` in the order of play
    - `players`: `name`, `sound`, `on` and `notes`, each `[start, length, midi, loudness, id]`,
      followed by the manner where there is one ("" before a glide), then the glide
    """
    return {
        "tempo": _number(performance.quarters_per_minute),
        "given": performance.tempo_is_given,
        "bars": [
            [bar.number, _number(bar.start), _number(bar.length), [_number(c) for c in bar.clicks]]
            for bar in performance.bars
        ],
        "players": [_player(player) for player in performance.players],
    }


def _player(player: Player) -> dict[str, object]:
    notes = [_stroke(stroke) for stroke in player.strokes]
    return {"name": player.name, "sound": player.sound, "on": player.at_first, "notes": notes}


def _stroke(stroke: Stroke) -> list[object]:
    record: list[object] = [_number(stroke.start), _number(stroke.length), stroke.midi]
    record += [stroke.loudness, stroke.id]
    if stroke.manner or stroke.glide is not None:
        record.append(stroke.manner)
    if stroke.glide is not None:
        record.append(stroke.glide)
    return record


def _number(time: Fraction) -> float | int:
    return int(time) if time.denominator == 1 else round(float(time), 4)
