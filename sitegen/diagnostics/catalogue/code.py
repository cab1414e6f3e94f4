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

    Where the name of a file is what is wrong, `good_file` names that of the cure; where the bad
    one is a symbolic link, `link` says where it leads. `beside` are other files of the content
    folder that both examples have, each with its text.
    """

    name: str
    severity: Literal["error", "warning", "note"]
    cause: str
    bad: str
    good: str
    file: str = "article.md"
    good_file: str = ""
    link: str = ""
    beside: tuple[tuple[str, str], ...] = ()
