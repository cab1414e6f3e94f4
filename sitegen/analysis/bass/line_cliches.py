"""Line clichés: one voice that moves by semitones while the chord's root stays.

Three notes or more, one a chord, each a semitone from the one before in one direction; each new
note is new in its chord, and the one before is gone, but for the root, which sounds on: Am
Am(maj7) Am7 Am6 is A G♯ G F♯, C C+ C6 is G G♯ A. The line may lie in the bass, Am AmM7/G♯ Am7/G
Am6/F♯, or inside. Arrangers' and jazz teaching call it a line cliché or contrapuntal elaboration
of static harmony: J. Coker, *Elements of the Jazz Language* (1991), from memory.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.chord_line import HeldChord, Passage
from sitegen.analysis.roots.wording import names_said, places_of, stretch_said
from sitegen.harmony import degree
from sitegen.score.pitch import PitchName

_FEWEST = 3
_DOWN, _UP = 11, 1

Tones = tuple[int, ...]


def cliche_facts(passages: Sequence[Passage], *, bass_is_known: bool) -> list[Fact]:
    """Return the longest line cliché of the chord symbols, as degrees over the root.

    `bass_is_known` says that no part plays another bass than the symbols name.
    """
    found = [
        cliche
        for passage in passages
        for stretch in _one_root(passage)
        for cliche in _cliches(stretch)
    ]
    if not found:
        return []
    chords, tones = max(found, key=lambda cliche: len(cliche[1]))
    names = [_name(held, tone) for held, tone in zip(chords, tones, strict=True)]
    text = " ".join(degree(name, held.chord) for name, held in zip(names, chords, strict=True))
    in_bass = bass_is_known and all(
        held.bass == tone for held, tone in zip(chords, tones, strict=True)
    )
    verb = "rises" if (tones[1] - tones[0]) % 12 == _UP else "falls"
    sentence = (
        f"{stretch_said(chords)}: a line cliché over {chords[0].chord.root}. The root stays, and "
        f"{names_said(names)} {verb} by semitones{' in the bass' if in_bass else ''}."
    )
    return [Fact("line-cliche", text, text, "", places_of(chords), sentence)]


def _one_root(passage: Passage) -> Iterator[Sequence[HeldChord]]:
    """Yield every longest stretch of three chords or more on one root."""
    start = 0
    for place in range(1, len(passage) + 1):
        if place < len(passage) and _stays(passage[place - 1], passage[place]):
            continue
        if place - start >= _FEWEST:
            yield passage[start:place]
        start = place


def _stays(first: HeldChord, second: HeldChord) -> bool:
    return first.root == second.root and not second.after_silence


def _cliches(stretch: Sequence[HeldChord]) -> Iterator[tuple[Sequence[HeldChord], Tones]]:
    """Yield the lines of a stretch, the longest from each chord; lines do not overlap."""
    sounding = [_tones(held) for held in stretch]
    root = stretch[0].root
    start = 0
    while start + _FEWEST <= len(stretch):
        ways = ((tone, way) for tone in sorted(sounding[start]) for way in (_DOWN, _UP))
        lines = (_follow(sounding, start, tone, way, root) for tone, way in ways)
        longest = max(lines, key=len)
        if len(longest) >= _FEWEST:
            yield stretch[start : start + len(longest)], longest
            start += len(longest) - 1
        else:
            start += 1


def _tones(held: HeldChord) -> frozenset[int]:
    return frozenset(tone for tone in range(12) if held.holds(tone) or held.bass == tone)


def _follow(
    sounding: Sequence[frozenset[int]], start: int, tone: int, way: int, root: int
) -> Tones:
    """Return the notes of the line from `tone` on, as long as it moves on with every chord."""
    line = [tone]
    for before, after in pairwise(sounding[start:]):
        last, step = line[-1], (line[-1] + way) % 12
        is_gone = last == root or last not in after
        if step not in after or step in before or not is_gone or step == root:
            break
        line.append(step)
    return tuple(line)


def _name(held: HeldChord, tone: int) -> PitchName:
    names = (*held.chord.members, held.chord.bass)
    return next(name for name in names if name.pitch_class == tone)
