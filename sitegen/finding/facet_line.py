"""The figures that stand beside a write-up in the archive, as short as can be."""

from collections.abc import Iterator

from sitegen.article import FrontMatter
from sitegen.finding.entry import Entry
from sitegen.finding.facets import BY_ID, tempos


def line_facts(front: FrontMatter, entry: Entry) -> tuple[tuple[str, str], ...]:
    """Return key, tempo, meter and tuning, each with its name; what is not known is left out."""
    told = {name: ", ".join(_found(name, front, entry)) for name in ("key", "meter", "tuning")}
    told["tempo"] = tempo_words(tempos(front, entry))
    order = ("key", "tempo", "meter", "tuning")
    return tuple((BY_ID[name].name, told[name]) for name in order if told[name])


def tempo_words(found: tuple[float, ...]) -> str:
    """Return tempos in beats a minute: "104 bpm", "88 to 120 bpm" for several, "" for none."""
    if not found:
        return ""
    slow, fast = f"{min(found):g}", f"{max(found):g}"
    return f"{slow} bpm" if slow == fast else f"{slow} to {fast} bpm"


def _found(name: str, front: FrontMatter, entry: Entry) -> Iterator[str]:
    return filter(None, dict.fromkeys(BY_ID[name].find(front, entry)))
