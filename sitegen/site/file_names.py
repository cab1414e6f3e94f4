"""Names that some system cannot hold: a site is copied to hosts and computers of any kind."""

import re

LONGEST_NAME = 120
"""Characters of one name; file systems end at 255 bytes, and one character has up to four."""
_MOST_BYTES = 200

# Windows: names of devices, with any suffix, and characters and ends that no name can have
# ("Naming Files, Paths, and Namespaces").
_DEVICE = re.compile(r"(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\..*)?", re.IGNORECASE)
_UNUSABLE = re.compile(r'[<>:"\\|?*\x00-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]')


def find_name_fault(path: str) -> str:
    """Return why a path, parts between slashes, cannot be kept everywhere; "" where it can."""
    return next((reason for part in path.split("/") if (reason := _fault(part))), "")


def _fault(name: str) -> str:
    if _DEVICE.fullmatch(name):
        return "is the name of a device on some systems"
    if name.endswith((" ", ".")) or name.startswith((" ", ".")):
        return "starts or ends with a dot or a space, which some systems leave out"
    if _UNUSABLE.search(name):
        return "has a character that no name can have on some systems"
    if len(name) > LONGEST_NAME or len(name.encode("utf-8", "surrogatepass")) > _MOST_BYTES:
        return f"has more than {LONGEST_NAME} characters"
    return ""
