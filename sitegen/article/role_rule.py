"""The rule of Markdown's inline text that finds roles, and braces that were meant as one."""

import re
from difflib import get_close_matches

from markdown_it.rules_inline import StateInline

from sitegen.article.roles import EXAMPLES, NAMES, RoleText, note_two_readings, read_role
from sitegen.article.tracker import Tracker, tracker_of
from sitegen.diagnostics import Diagnostic, fault

LONGEST = 300
_ROLE = re.compile(
    rf"\{{(?P<name>[^\W\d_][\w-]*)(?:\s+(?P<argument>[^{{}}\s][^{{}}]{{0,{LONGEST}}}?))?\s*\}}"
)
_OPENED = re.compile(rf"\{{(?:{'|'.join(NAMES)})[ \t\n]")
# One word that could be an id, a time, a chord, a pitch or a degree.
_ROLE_LIKE = re.compile(r"[\w♭♯#:/.+-]+")
_ALIKE = 0.7
_PLAIN = r"write \{ where a plain brace is meant"


def find_role(state: StateInline, silent: bool) -> bool:
    """Take a role at the current place; braces that are none stay text, with a fault if due."""
    if state.src[state.pos] != "{":
        return False
    match = _ROLE.match(state.src, state.pos, state.posMax)
    if match is None:
        if not silent and _OPENED.match(state.src, state.pos, state.posMax):
            _report_open(state)
        return False
    return _take(state, match, silent=silent)


def _take(state: StateInline, match: re.Match[str], *, silent: bool) -> bool:
    tracker = tracker_of(state.env)
    if match["name"] not in NAMES or match["argument"] is None:
        if not silent:
            tracker.report(*_plain_brace_faults(tracker, match))
        return False
    role = _role_text(tracker, match)
    found = read_role(role)
    if isinstance(found, Diagnostic):
        if not silent:
            tracker.report(found)
        return False
    if not silent:
        note = note_two_readings(role)
        tracker.report(*([note] if note else []))
        token = state.push("role", "", 0)
        token.content = match[0]
        token.meta = {"use": found}
        tracker.roles.append(found)
    state.pos = match.end()
    return True


def _role_text(tracker: Tracker, match: re.Match[str]) -> RoleText:
    start = match.start("argument")
    return RoleText(
        match["name"],
        match["argument"],
        tracker.span(*match.span()),
        lambda first, end: tracker.span(start + first, start + end),
        tracker.source,
    )


def _plain_brace_faults(tracker: Tracker, match: re.Match[str]) -> list[Diagnostic]:
    """Return the fault of braces that hold a word, if any: `{word}` alone is prose."""
    name, argument = match["name"], match["argument"]
    if argument is None:
        if name not in NAMES:
            return []
        message = f'the role "{name}" says nothing'
        hint = f"write it as {EXAMPLES[name]}, or {_PLAIN}"
        return [fault("role-argument", tracker.source, tracker.span(*match.span()), message,
                      hint=hint)]  # fmt: skip
    near = get_close_matches(name.lower(), NAMES, n=1, cutoff=_ALIKE)
    code = "role-name" if near or _ROLE_LIKE.fullmatch(argument) else "role-unknown"
    mean = f'did you mean "{near[0]}"?' if near else f"known are: {', '.join(NAMES)}"
    return [fault(code, tracker.source, tracker.span(*match.span("name")),
                  f'no role is called "{name}"', hint=f"{mean}; {_PLAIN}")]  # fmt: skip


def _report_open(state: StateInline) -> None:
    tracker = tracker_of(state.env)
    end = re.compile(r"\w+").match(state.src, state.pos + 1)
    span = tracker.span(state.pos, end.end() if end else state.pos + 1)
    message = "this role is opened and not closed"
    tracker.report(
        fault("role-open", tracker.source, span, message, hint=f"close it with }}, or {_PLAIN}")
    )
