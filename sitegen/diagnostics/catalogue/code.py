"""One entry of the catalogue."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True)
class Code:
    """A kind of fault: its name, weight, cause, and an example of it with its cure.

    `bad` and `good` are the text of an article; where it does not open with `---`,
    the tests put the shortest valid front matter before it. `file` names the file
    in the content folder that holds the example when it is not an article
    (`site.toml`). The tests check that `bad` brings this code and `good` brings nothing.
    """

    name: str
    severity: Literal["error", "warning", "note"]
    cause: str
    bad: str
    good: str
    file: str = "article.md"
