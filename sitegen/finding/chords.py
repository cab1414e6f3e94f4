"""The progression of a chart as it is searched: in the order of play, with its loop."""

from sitegen.analysis.progressions import chart_progression
from sitegen.finding.entry import ChordStep, Progression
from sitegen.harmony.progressions import Progression as Played
from sitegen.harmony.progressions import Step, core
from sitegen.score.chart import Chart


def find_progression(chart: Chart) -> Progression | None:
    """Return the chords of a chart; None where it has fewer than two."""
    return as_searched(chart_progression(chart))


def as_searched(played: Played) -> Progression | None:
    """Return a progression as it is searched; None where it has fewer than two chords."""
    steps = tuple(map(_step, played.steps))
    if len(steps) < 2:  # noqa: PLR2004 - one chord is no progression
        return None
    start, length = _loop(played)
    tonic = -1 if played.key is None else played.key.tonic.pitch_class
    minor = played.key is not None and played.key.is_minor
    return Progression(steps, tonic, minor, start, length)


def _step(step: Step) -> ChordStep:
    found = core(step.chord)
    return ChordStep(
        str(step.chord), found.root, found.notes, found.family, step.bar, step.last_bar
    )


def _loop(played: Played) -> tuple[int, int]:
    """Return the first step and the number of steps of one pass of the loop."""
    loop = played.loop
    if loop is None:
        return 0, 0
    before = Played(played.bars[: loop.first], played.key)
    return len(before.steps), len(played.cell.steps)
