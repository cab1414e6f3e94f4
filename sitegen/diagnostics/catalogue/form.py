"""Codes for faults found in: form."""

from sitegen.diagnostics.catalogue.code import Code


def _block(*lines: str) -> str:
    return "\n".join(("```form", "id: plan", *lines, "```", ""))


_GOOD = _block("Verse 1 | 16", "Chorus 1 | 8", "Verse 2 | 16", "Chorus 2 | 8 | = Chorus 1")
_GOOD_TIMES = _block(
    "tempo: 120", "", "Verse 1 | 16 | 0:00", "Chorus 1 | 8 | 0:32", "Verse 2 | 16 | 0:48"
)

FORM_CODES: tuple[Code, ...] = (
    Code(
        "form-empty",
        "error",
        "A form block has no section: nothing stands under its head.",
        _block("tempo: 96"),
        _GOOD,
    ),
    Code(
        "form-cells",
        "error",
        "A section's line has no bars, or says twice what can be said once.",
        _block("Verse 1 16", "Chorus 1 | 8"),
        _GOOD,
    ),
    Code(
        "form-name",
        "error",
        "A section has no name, or one too long to be shown.",
        _block("Verse 1 | 16", " | 8"),
        _GOOD,
    ),
    Code(
        "form-double",
        "warning",
        "Two sections have the same name, so that links and = cannot tell them apart.",
        _block("Verse | 16", "Chorus | 8", "Verse | 16"),
        _GOOD,
    ),
    Code(
        "form-bars",
        "error",
        "What stands in the second place of a section's line is not a number of bars, "
        "or the meter beside it is none.",
        _block("Verse 1 | sixteen", "Chorus 1 | 8"),
        _block("Verse 1 | 16", "Chorus 1 | 7 1/2", "Bridge | 8 (7/8)"),
    ),
    Code(
        "form-time",
        "error",
        "A start time is not written as minutes and seconds, or lies outside the song.",
        _block("Verse 1 | 16 | 0:00", "Chorus 1 | 8 | 0:75"),
        _GOOD_TIMES,
    ),
    Code(
        "form-order",
        "error",
        "A section starts no later than the one before it.",
        _block("tempo: 120", "Verse 1 | 16 | 0:32", "Chorus 1 | 8 | 0:23"),
        _GOOD_TIMES,
    ),
    Code(
        "form-same",
        "error",
        "The name after = is not the name of another section of the form.",
        _block("Verse 1 | 16", "Chorus 1 | 8", "Chorus 2 | 8 | = Corus 1"),
        _GOOD,
    ),
    Code(
        "form-extra",
        "error",
        "A section says something that a form has no place for.",
        _block("Verse 1 | 16 | chords: verse"),
        _block("Verse 1 | 16 | say: half time"),
    ),
    Code(
        "form-chart",
        "error",
        "A word after changes:, charts:, notation: or see: cannot be the id of a chart.",
        _block("Verse 1 | 16 | changes: Verse_1"),
        _GOOD,
    ),
    Code(
        "form-long",
        "error",
        "A form has more sections or bars than any song: more than 500, or more than 10,000.",
        _block("Verse 1 | 9000", "Chorus 1 | 2000"),
        _GOOD,
    ),
    Code(
        "form-drift",
        "warning",
        "The time between two start times does not hold the bars counted there at the tempo. "
        "A second at each end is allowed, since times are whole seconds, and three hundredths "
        "of the time, since players breathe.",
        _block("tempo: 120", "Verse 1 | 16 | 0:00", "Chorus 1 | 8 | 0:42", "Verse 2 | 16 | 0:58"),
        _GOOD_TIMES,
    ),
    Code(
        "form-tempo",
        "warning",
        "All the start times of a form agree with each other, but not with its tempo.",
        _block("tempo: 60", "Verse 1 | 16 | 0:00", "Chorus 1 | 8 | 0:32", "Verse 2 | 16 | 0:48"),
        _GOOD_TIMES,
    ),
)
