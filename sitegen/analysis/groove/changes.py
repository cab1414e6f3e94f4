"""What each bar of the drums changes against the groove."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from sitegen.analysis.groove.kit import TOMS, Groove, Hit, KitBar, drum_name
from sitegen.analysis.groove.wording import said_counts
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.reading import Fact, Place
from sitegen.analysis.wording import percent
from sitegen.score.drums import KIT

_MOST_SAID = 4
_MOST_TOLD = 2
_ORDER = {label: n for n, label in enumerate(KIT)}


def groove_facts(
    kit: Sequence[KitBar], groove: Groove | None, fills: Sequence[int], prefix: str
) -> list[Fact]:
    """Return the groove, how alike neighbouring bars are, and what single bars change.

    `fills` are the numbers of the bars that are told as fills already.
    """
    facts = _likeness_facts(kit, prefix)
    if groove is None:
        return facts
    if len(groove.matches) > len(groove.bars):
        facts += _model_facts(kit, groove, prefix)
    pairs = [(bar, groove.model(n)) for n, bar in enumerate(kit)]
    told = [(bar, change) for bar, model in pairs if (change := _change(bar, model))]
    few = sum(bar.number not in fills for bar, _ in told) <= _MOST_TOLD
    for bar, change in told:
        number = bar.number
        sentence = f"Bar {number} {change}." if few and number not in fills else ""
        facts.append(Fact(f"{prefix}.bar-{number}", change, change, "", (_start(bar),), sentence))
    return facts


def _likeness_facts(kit: Sequence[KitBar], prefix: str) -> list[Fact]:
    """Return the mean likeness of neighbouring bars, by Dice's coefficient (see `likeness`)."""
    pairs = list(pairwise(kit))
    if not pairs:
        return []
    shared = sum(2 * len(one.shape & other.shape) for one, other in pairs)
    mean = Fraction(shared, sum(len(one.shape) + len(other.shape) for one, other in pairs))
    return [Fact(f"{prefix}.bar-likeness", mean, percent(mean), "from bar to bar")]


def _model_facts(kit: Sequence[KitBar], groove: Groove, prefix: str) -> list[Fact]:
    words = bars_said([bar.number for bar in groove.bars])
    count = len(groove.matches)
    places = tuple(_start(kit[n]) for n in groove.matches)
    return [
        Fact(f"{prefix}.groove", words, words, "", tuple(map(_start, groove.bars))),
        Fact(f"{prefix}.groove-bars", count, str(count), "bars", places),
    ]


def _start(bar: KitBar) -> Place:
    return Place(bar.number, Fraction(1))


def _change(bar: KitBar, model: KitBar) -> str:
    """Return what a bar adds to its model and what it leaves out, "" if nothing."""
    if bar.shape == model.shape or bar.meter is not model.meter:
        return ""
    own, usual = ({stroke[:2] for stroke in each.shape} for each in (bar, model))
    if own < usual and _is_cut(own, usual):
        return f"breaks off after {said_counts(bar.meter, [max(own)[0]])}"
    opened = {stroke[:2] for stroke in bar.shape if stroke[2]}
    opens = opened & usual - {stroke[:2] for stroke in model.shape if stroke[2]}
    changes = (
        ("leaves out", usual - own, usual),
        ("opens", opens, opens),
        ("adds", own - usual, own),
    )
    told = [f"{verb} {_drums(hits, among, bar)}" for verb, hits, among in changes if hits]
    return ", and ".join(filter(None, [", ".join(told[:-1]), *told[-1:]]))


def _is_cut(own: set[Hit], usual: set[Hit]) -> bool:
    """Tell whether a bar is its model up to its own last hit, and nothing from there on."""
    last = max(own)[0]
    missing = {offset for offset, _ in usual - own}
    return len(missing) > 2 and min(missing) >= last  # noqa: PLR2004 - two are named


def _drums(hits: set[Hit], among: set[Hit], bar: KitBar) -> str:
    """Return drums with their counts: "the hi-hat from 3 on and the snare on 4".

    Several toms are told as one.
    """
    toms = {hit for hit in hits if hit[1] in TOMS}
    words = []
    if len({label for _, label in toms}) > 1:
        hits = hits - toms
        words = [f"toms{_where(toms, {hit for hit in among if hit[1] in TOMS}, bar)}"]
    for drum in sorted(
        {label for _, label in hits}, key=lambda drum: _ORDER.get(drum, len(_ORDER))
    ):
        mine, usual = ({hit for hit in each if hit[1] == drum} for each in (hits, among))
        words.append(f"{drum_name(drum)}{_where(mine, usual, bar)}")
    return listed(words)


def _where(hits: set[Hit], among: set[Hit], bar: KitBar) -> str:
    """Return the counts; "from 3 on" for all of `among` from there, "" for all of the bar."""
    own, usual = (sorted({offset for offset, _ in each}) for each in (hits, among))
    if own == usual and own[0] == 0 and len(own) > _MOST_SAID:
        return ""
    if len(own) > 2 and own == usual[-len(own) :]:  # noqa: PLR2004 - two are named
        return f" from {said_counts(bar.meter, own[:1])} on"
    if len(own) > _MOST_SAID:
        return f" in {len(own)} places"
    return f" on {said_counts(bar.meter, own)}"
