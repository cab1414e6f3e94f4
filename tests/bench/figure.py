"""One measured figure: a count of right answers beside a library's and the target."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class Figure:
    """A question put to one set of cases.

    `right` of `cases` answers are right; `library` names a general library with its own count of
    right answers on the same cases, where one was asked in the same run; `target` is the share
    to reach.
    """

    question: str
    cases_of: str
    right: int
    cases: int
    target: Fraction
    library: str = ""
    library_right: int | None = None

    @property
    def reached(self) -> bool:
        """True when the share of right answers is the target's or better."""
        return self.cases > 0 and Fraction(self.right, self.cases) >= self.target

    def row(self) -> str:
        """Return the figure as a line of the table."""
        ours = _share(self.right, self.cases)
        theirs = ""
        if self.library_right is not None:
            theirs = f"{self.library} {_share(self.library_right, self.cases)}"
        mark = "reached" if self.reached else "missed"
        goal = f"{float(self.target):.1%}"
        return f"{self.question:<34} {self.cases_of:<34} {ours:<24} {theirs:<32} {goal:>7} {mark}"


def _share(right: int, cases: int) -> str:
    return f"{right} of {cases} ({right / cases:.1%})" if cases else "no cases"
