"""What a part's notes are to their chords, in shares, and which degrees it sings most.

A note counts as what it is when it starts; by duration it counts for each chord under it as
what it is there. Notes over N.C. and without pitch are not counted. Repeats count once, as
written. Paths, for each part and for `chord-tone`, `tension` and `non-chord-tone`:

- `<part>.chord-tone-share`: how many of its notes are chord tones.
- `<part>.chord-tone-share-by-duration`: for how much of its sounding time it has chord tones.
- `<part>.chord-tone-share-on-strong-beats`: of the notes that start on a strong beat: the
  downbeat, and every beat that weighs more than the weakest ones (1 and 3 in 4/4, 1 in 3/4).
- `<part>.chord-tone-share-on-weak-beats`: of the notes on the other beats. Beats are the counts
  of a meter in quarters or longer, the groups of a compound meter and of one in eighths.
- `<part>.chord-tone-share-off-the-beat`: of the notes between the beats.
- `<part>.chord-tone-share-on-long-notes`: of the notes at least twice as long as the part's
  usual note, the median.
- `<part>.root-share`: how many notes are the root of their chord; "0 %" is told of ten and more.
- `<part>.favourite-degree`: the degree it has most often, left out when two share that place.
- `<part>.favourite-degree-by-duration`, `<part>.favourite-degree-on-long-notes`: the same.
- `<part>.favourite-key-degree`: the degree of the key it has most often.

Of the shares by place only chord tones are told when there are none.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from sitegen.analysis.reading import ChartReading, Fact, Place
from sitegen.analysis.share_sentences import tell_shares
from sitegen.analysis.standing import LONG, OFF, STRONG, WEAK, Standing, standings
from sitegen.score.role import Role

_UNITS = {
    STRONG: "of its notes on strong beats",
    WEAK: "of its notes on weak beats",
    OFF: "of its notes off the beat",
    LONG: "of its long notes",
}
_FEWEST_WITHOUT_ROOT = 10
_FEWEST_FAVOURITE = 2


def find_shares(reading: ChartReading) -> tuple[Fact, ...]:
    """Return the shares of every part that sounds over chords, part by part."""
    return tuple(fact for standing in standings(reading) for fact in _part_facts(standing))


def _part_facts(standing: Standing) -> Iterator[Fact]:
    prefix = standing.part.name.replace(" ", "-")
    told = tell_shares(standing)
    places = [Place(n.bar, n.beat, (n.id,) if n.id else ()) for n in standing.notes]
    facts = (*_role_shares(standing), *_root_share(standing), *_favourites(standing))
    for path, value, text, unit, notes in facts:
        evidence = tuple(places[note] for note in notes)
        yield Fact(f"{prefix}.{path}", value, text, unit, evidence, told.get(path, ""))


# A fact's path after the part, value, text and unit, and the places of its notes.
_Found = tuple[str, str | Fraction, str, str, Sequence[int]]


def _role_shares(standing: Standing) -> Iterator[_Found]:
    everything = range(len(standing.notes))
    for role in Role:
        yield _role_share(standing, role, "", "of its notes", everything)
    if standing.spells:
        for role in Role:
            yield _share_by_duration(standing, role)
    for ending, unit in _UNITS.items():
        group = standing.groups[ending]
        for role in Role:
            if group:
                found = _role_share(standing, role, ending, unit, group)
                if found[1] or role is Role.CHORD_TONE:
                    yield found


def _role_share(
    standing: Standing, role: Role, ending: str, unit: str, group: Sequence[int]
) -> _Found:
    alike = [note for note in group if standing.notes[note].role is role]
    return _share(f"{_path(role)}{ending}", len(alike), len(group), unit, alike)


def _share_by_duration(standing: Standing, role: Role) -> _Found:
    mine = [spell for spell in standing.spells if spell.role is role]
    whole = sum(spell.ticks for spell in standing.spells)
    notes = list(dict.fromkeys(spell.note for spell in mine))
    length = sum(spell.ticks for spell in mine)
    return _share(f"{_path(role)}-by-duration", length, whole, "of its time", notes)


def _root_share(standing: Standing) -> Iterator[_Found]:
    roots = [n for n, note in enumerate(standing.notes) if note.degree == "R"]
    if roots or len(standing.notes) >= _FEWEST_WITHOUT_ROOT:
        yield _share("root-share", len(roots), len(standing.notes), "of its notes", roots)


def _favourites(standing: Standing) -> Iterator[_Found]:
    degrees = [note.degree for note in standing.notes]
    everything = range(len(degrees))
    counts = Counter(degrees)
    yield from _favourite("favourite-degree", counts, degrees, everything)
    lengths: Counter[str] = Counter()
    for degree, length in zip(degrees, standing.lengths, strict=True):
        lengths[degree] += length
    yield from _favourite("favourite-degree-by-duration", lengths, degrees, everything)
    long = standing.groups[LONG]
    held = Counter(degrees[note] for note in long)
    yield from _favourite(f"favourite-degree{LONG}", held, degrees, long)
    keyed = [note.key_degree for note in standing.notes]
    yield from _favourite("favourite-key-degree", Counter(keyed), keyed, everything)


def _favourite(
    path: str, amounts: Counter[str], degrees: Sequence[str], group: Iterable[int]
) -> Iterator[_Found]:
    """Return the degree with the largest amount, unless two share it or it comes only once."""
    (first, amount), *others = amounts.most_common(2) or [("", 0)]
    notes = [note for note in group if degrees[note] == first]
    tied = bool(others) and others[0][1] == amount
    if first and not tied and len(notes) >= _FEWEST_FAVOURITE:
        yield path, first, first, "", notes


def _share(path: str, count: int, of: int, unit: str, notes: Sequence[int]) -> _Found:
    return path, Fraction(count, of), f"{round(100 * count / of)} %", unit, notes


def _path(role: Role) -> str:
    return f"{role.value.replace(' ', '-')}-share"
