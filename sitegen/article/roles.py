"""The inline roles: `{chord Gbmaj13}` and its like, from their text to what they stand for."""

import re
from collections.abc import Callable
from dataclasses import dataclass

from sitegen.article.reading import RoleUse
from sitegen.diagnostics import Diagnostic, fault
from sitegen.harmony import ChordSymbolError, find_two_readings, read_chord
from sitegen.score.clock import read_clock
from sitegen.score.pitch import Pitch, PitchName, signs
from sitegen.source import Source, Span

NAMES = ("chord", "degree", "note", "at", "see", "fact")
"""The names of the roles."""

EXAMPLES = {
    "chord": "{chord Gbmaj13}",
    "degree": "{degree b6}",
    "note": "{note Eb2}",
    "at": "{at 1:23}",
    "see": "{see opening}",
    "fact": "{fact opening bars}",
}
"""One example of each role."""

_ID = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_WORD = re.compile(r"\S+")
_DEGREE = re.compile(r"R|([b♭]{0,2}|[#♯]{0,2}|x)(1[0-3]|[1-9])")


@dataclass(frozen=True)
class RoleText:
    """A role as it is written: `spans` gives the place of code points of the argument."""

    name: str
    argument: str
    span: Span
    spans: Callable[[int, int], Span]
    source: Source

    @property
    def argument_span(self) -> Span:
        """Where the whole argument stands."""
        return self.spans(0, len(self.argument))

    def wrong(self, message: str, start: int = 0, end: int | None = None) -> Diagnostic:
        """Return the fault for an argument, or a part of it, that cannot be read."""
        span = self.spans(start, len(self.argument) if end is None else end)
        hint = f"write it as {EXAMPLES[self.name]}"
        return fault("role-value", self.source, span, message, hint=hint)


def read_role(role: RoleText) -> RoleUse | Diagnostic:
    """Return what a role with a known name and an argument says, or what is wrong with it."""
    if role.name == "see":
        return _read_see(role)
    if role.name == "fact":
        return _read_fact(role)
    if role.name == "chord":
        return _read_chord(role)
    try:
        value = _READERS[role.name](" ".join(role.argument.split()))
    except ValueError as wrong:
        return role.wrong(str(wrong))
    return RoleUse(role.name, role.argument, role.span, role.argument_span, value)


def _read_chord(role: RoleText) -> RoleUse | Diagnostic:
    try:
        chord = read_chord(role.argument)
    except ChordSymbolError as wrong:
        span = role.spans(wrong.start, max(wrong.end, wrong.start + 1))
        return fault(wrong.code, role.source, span, wrong.message, hint=wrong.hint)
    return RoleUse(role.name, role.argument, role.span, role.argument_span, chord)


def note_two_readings(role: RoleText) -> Diagnostic | None:
    """Return the note on a chord symbol by which others mean another chord; None for all else."""
    two = find_two_readings(role.argument) if role.name == "chord" else None
    if two is None:
        return None
    message, hint = two.say(role.argument)
    return fault("chord-read-as", role.source, role.argument_span, message, hint=hint)


def _read_note(text: str) -> Pitch | PitchName:
    try:
        return Pitch.read(text)
    except ValueError:
        pass
    try:
        return PitchName.read(text)
    except ValueError:
        raise ValueError(f'"{text}" is not a pitch') from None


def read_degree(text: str) -> str:
    """Return a degree with ♭ and ♯ for b and #; raises ValueError for other text."""
    if not _DEGREE.fullmatch(text):
        raise ValueError(f'"{text}" is not a degree: R, or 1 to 13 with b or # before it')
    return signs(text)


_READERS: dict[str, Callable[[str], Pitch | PitchName | str | int]] = {
    "note": _read_note,
    "degree": read_degree,
    "at": read_clock,
}


def _read_see(role: RoleText) -> RoleUse | Diagnostic:
    wrong = _id_fault(role, 0, len(role.argument))
    if wrong is not None:
        return wrong
    place = role.argument_span
    return RoleUse("see", role.argument, role.span, place, target=role.argument, target_span=place)


def _read_fact(role: RoleText) -> RoleUse | Diagnostic:
    cited, equals, _ = role.argument.partition("=")
    words = [match.span() for match in _WORD.finditer(cited)]
    if len(words) < 2:  # noqa: PLR2004
        return role.wrong("a fact names a chart and one of its figures")
    target, path, *more = words
    wrong = _id_fault(role, *target)
    if wrong is not None:
        return wrong
    if more:
        return role.wrong("more than a chart and one of its figures", more[0][0], more[-1][1])
    expected = _trimmed(role.argument, len(cited) + len(equals))
    if equals and expected[0] == expected[1]:
        return role.wrong("nothing stands after =", len(cited), len(cited) + 1)
    return RoleUse(
        "fact",
        role.argument,
        role.span,
        role.argument_span,
        target=role.argument[slice(*target)],
        target_span=role.spans(*target),
        path=role.argument[slice(*path)],
        path_span=role.spans(*path),
        expected=" ".join(role.argument[slice(*expected)].split()),
        expected_span=role.spans(*expected) if equals else None,
    )


def _trimmed(text: str, start: int) -> tuple[int, int]:
    """Return where the text from `start` on stands without blanks around it."""
    end = len(text.rstrip())
    while start < end and text[start].isspace():
        start += 1
    return min(start, end), end


def _id_fault(role: RoleText, start: int, end: int) -> Diagnostic | None:
    text = role.argument[start:end]
    if _ID.fullmatch(text):
        return None
    message = f'"{" ".join(text.split())}" is not the id of a chart'
    return role.wrong(message, start, end)


def role_text(use: RoleUse) -> str:
    """Return what a role is read as where nothing knows more of it than the article does."""
    if use.name == "at":
        return " ".join(use.argument.split())
    if use.value is not None:
        return str(use.value)
    return use.expected or use.target
