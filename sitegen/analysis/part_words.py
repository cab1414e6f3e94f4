"""How a part is spoken of in a sentence."""

from sitegen.score.chart import Part


def the_part(part: Part) -> str:
    """Return a part's name as it stands in a sentence: "the voice", "guitar 2"."""
    return part.name if part.name[-1:].isdigit() else f"the {part.name}"


def capitalised(words: str) -> str:
    """Return a sentence with its first letter large and the others as they are."""
    return words[:1].upper() + words[1:]
