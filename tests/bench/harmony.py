"""How right the harmony engine is, as counts beside a general library's and the targets.

Run it with `python tests/bench/harmony.py [question ...]`; it takes minutes, since it reads
music21's corpora. Questions: names, numerals, keys, key-changes, spelling; all of them
without an argument.
"""

import importlib
import sys
from pathlib import Path

QUESTIONS = ("names", "numerals", "keys", "key-changes", "spelling")


def main(asked: list[str]) -> int:
    """Print the table of the questions asked; the status is 2 for an unknown question."""
    unknown = [question for question in asked if question not in QUESTIONS]
    if unknown:
        print(f"no question is called {unknown[0]}; known are {', '.join(QUESTIONS)}")
        return 2
    for question in asked or QUESTIONS:
        module = question.replace("-", "_")
        for figure in importlib.import_module(f"bench.{module}").measure():
            print(figure.row(), flush=True)
    return 0


if __name__ == "__main__":
    tests = Path(__file__).parents[1]
    sys.path[:0] = [str(tests), str(tests.parent)]
    sys.exit(main(sys.argv[1:]))
