"""Where chords lead: which chord of a line answers another, and whether it is the one awaited."""

from collections.abc import Iterable

from sitegen.harmony.applied import is_leading
from sitegen.harmony.scales import is_diatonic
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

_THIRD_BELOW = Interval(-2, -4)
_FOURTH_ABOVE = 5
_STEPS = (1, 2)


def semitones_up(low: PitchName, high: PitchName) -> int:
    """Return the semitones from one name up to another, 0 to 11, whatever their letters."""
    return (high.pitch_class - low.pitch_class) % 12


def acting_root(chord: Chord) -> PitchName:
    """Return the root of the dominant that a chord acts as.

    A diminished or half-diminished chord on a leading tone acts as the dominant a major third
    lower, F♯dim7 as D7♭9 without its root (any harmony book); all others have their own root.
    """
    return _THIRD_BELOW.above_name(chord.root) if is_leading(chord) else chord.root


def find_answer(chord: Chord, after: Iterable[Chord]) -> Chord | None:
    """Return the first of the chords `after` that acts with another root; None without one.

    So A, A7 and C♯dim7 in a row are all answered by the D minor that follows.
    """
    here = acting_root(chord).pitch_class
    return next((other for other in after if acting_root(other).pitch_class != here), None)


def resolves(chord: Chord, goal: PitchName, answer: Chord, key: Key) -> bool:
    """Tell whether `answer` is what a dominant or leading-tone chord of `goal` leads to.

    That is a chord on the goal; the six-four over it, which delays it; or in deceptive motion
    a chord of the key on the step above the dominant's root.
    """
    if semitones_up(goal, answer.root) == 0 or is_six_four(answer, goal):
        return True
    step = semitones_up(acting_root(chord), answer.root)
    return step in _STEPS and is_diatonic(answer, key)


def is_six_four(chord: Chord, bass: PitchName) -> bool:
    """Tell whether the chord is a triad with its fifth, the note `bass`, as its lowest."""
    over = semitones_up(bass, chord.root) == _FOURTH_ABOVE
    return over and semitones_up(bass, chord.bass) == 0
