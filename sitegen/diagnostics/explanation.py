"""A code of the catalogue in words, with an example that has the fault and one that has not."""

from sitegen.diagnostics.catalogue import Code

_LONGEST_EXAMPLE = 2000


def explain_code(code: Code) -> str:
    """Return what a code means, for a terminal; no line feed at the end."""
    parts = [f"{code.severity}[{code.name}] {code.cause}"]
    for heading, example in (("with the fault", code.bad), ("without it", code.good)):
        text = _printable(example)
        if text:
            parts.append(f"\n{heading}:\n\n{text}")
    return "\n".join(parts)


def _printable(example: str) -> str:
    """Return the example indented; a lone surrogate, standing for a raw byte, as its number."""
    if len(example) > _LONGEST_EXAMPLE:
        example = f"{example[:80]} ..."
    plain = example.encode("utf-8", "backslashreplace").decode("utf-8")
    return "\n".join(f"    {line}".rstrip() for line in plain.strip("\n").split("\n"))
