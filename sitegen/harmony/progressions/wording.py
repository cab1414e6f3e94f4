"""What two progressions have in common, in a musician's words."""

from collections.abc import Sequence

from sitegen.harmony.fingering import fingered_chord
from sitegen.harmony.progressions.likeness import Likeness, StepPair
from sitegen.harmony.progressions.rows import Step
from sitegen.score.interval import Interval

_COUNTS = "no one two three four five six seven eight nine ten eleven twelve".split()
_PLACES = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth"
_ORDINALS = _PLACES.split()
_PACES = {2: "each twice as long", 4: "each four times as long"}
_SHORTER = {2: "each half as long", 4: "each a quarter as long"}
_MOST_DIFFERENCES = 3


def say_likeness(likeness: Likeness, first: str = "") -> str:
    """Return what the second of two progressions has, as the object of a sentence.

    "the same four chords, a minor third lower"; "the same four-chord loop, starting from the
    third chord"; "the same changes" where a chord comes back; "the chords of bars 1 to 4 of the
    other"; "the same chords, with G♯5 for Bsus2 in bar 12"; "other chords" for what is unlike.
    `first` names the other one, "Example 4". Chords and bars of differences are the second's,
    the other's chords moved to its key.
    """
    if likeness.kind == "unlike":
        return "other chords"
    if likeness.kind == "contained":
        head = _say_contained(likeness, first)
    else:
        inside = "in its loop " if likeness.of_loops and likeness.loops == "second" else ""
        head = f"{inside}{_say_count(likeness)}{_say_as(likeness, first)}"
    details = [likeness.motion, _say_start(likeness), _say_pace(likeness)]
    return ", ".join(filter(None, [head, *details, say_differences(likeness)]))


def say_differences(likeness: Likeness) -> str:
    """Return which chords differ: "with G♯5 for Bsus2 in bar 12"; "" where none does."""
    different = [pair for pair in likeness.pairs if pair.cost]
    interval = _interval(likeness)
    if likeness.kind != "alike":
        words = [_say_exchange(pair, interval) for pair in different]
        unsaid = "" if likeness.with_extensions else "but for extensions"
    else:
        words = [_say_difference(pair, interval) for pair in different]
        kept = len(likeness.pairs) - len(different)
        unsaid = f"{_count(kept)} of {_count(len(likeness.pairs))} kept"
    words = list(dict.fromkeys(words))
    return f"with {_listed(words)}" if 0 < len(words) <= _MOST_DIFFERENCES else unsaid


def _say_difference(pair: StepPair, interval: Interval) -> str:
    if pair.second is None:
        return f"one {_moved(pair.first, interval)} fewer"
    place = f"in bar {pair.second.bar}"
    if pair.first is None:
        return f"an extra {pair.second.chord} {place}"
    return f"{_say_exchange(pair, interval)} {place}"


def _say_exchange(pair: StepPair, interval: Interval) -> str:
    """Return both chords of a pair that has both: "E5 for Esus2"."""
    new = pair.second.chord if pair.second else ""
    return f"{new} for {_moved(pair.first, interval)}"


def _moved(step: Step | None, interval: Interval) -> str:
    return str(fingered_chord(step.chord, interval)) if step else ""


def _interval(likeness: Likeness) -> Interval:
    """Return the interval up from the first to the second as their roots are spelled."""
    for pair in likeness.pairs:
        if pair.first and pair.second:
            found = Interval.between_names(pair.first.chord.root, pair.second.chord.root)
            if found.semitones % 12 == likeness.interval:
                return found
    return Interval(0, 0)


def _count(number: int) -> str:
    return _COUNTS[number] if number < len(_COUNTS) else str(number)


def _listed(words: Sequence[str]) -> str:
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def _say_contained(likeness: Likeness, first: str) -> str:
    bars = _say_bars(likeness.bars)
    if likeness.holder == "second":
        head = f"the chords of {first}" if first else "the same chords"
        return f"{head} in {bars}" if bars else f"{head} among its own"
    of = f" of {first}" if first else " of the other"
    return f"the chords of {bars}{of}" if bars else f"a run of the chords{of}"


def _say_bars(bars: tuple[int, ...]) -> str:
    if not bars:
        return ""
    first, last = bars
    if first == last:
        return f"bar {first}"
    return f"bars {first} {'and' if last == first + 1 else 'to'} {last}"


def _say_count(likeness: Likeness) -> str:
    if likeness.kind == "alike":
        few = sum(1 for pair in likeness.pairs if pair.cost) <= _MOST_DIFFERENCES
        return "the same chords" if few else "much the same chords"
    chords = [str(pair.second.chord) for pair in likeness.pairs if pair.second]
    loop = likeness.loops == "both"
    if len(set(chords)) < len(chords):
        return "the same loop" if loop else "the same changes"
    count = _count(len(chords))
    if loop:
        return f"the same {count}-chord loop"
    return f"the same {count} chords" if len(chords) > 1 else "the same chord"


def _say_as(likeness: Likeness, first: str) -> str:
    if likeness.of_loops and likeness.loops == "first":
        return f" as the loop of {first or 'the other'}"
    return f" as {first}" if first else ""


def _say_start(likeness: Likeness) -> str:
    if not likeness.start:
        return ""
    place = likeness.start
    ordinal = _ORDINALS[place] if place < len(_ORDINALS) else f"{place + 1}th"
    return f"starting from the {ordinal} chord"


def _say_pace(likeness: Likeness) -> str:
    pace = likeness.pace
    if pace is None or pace == 1:
        return ""
    if pace.denominator == 1:
        return _PACES.get(pace.numerator, "")
    return _SHORTER.get(pace.denominator, "") if pace.numerator == 1 else ""
