"""What comes of thousands of damaged articles: failures, hangs and faults without a place.

Run it with `python tests/bench/damage.py [--count 5000] [--seed 1] [--keep FOLDER]`; it takes some
minutes. Articles of the demo, of the chart kinds and of the catalogue of faults are damaged by
byte, word, line and block and in their structure, and are checked as `sitegen check` does it. The
status is 1 where anything is found; with --keep, what brought it is written to that folder.
"""

import argparse
import sys
import tempfile
from collections import Counter
from pathlib import Path
from random import Random

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from property.damage import damage, originals  # noqa: E402 - as above
from property.trial import Outcome, check_article, new_content  # noqa: E402 - as above

_EVERY = 500


def main(arguments: list[str]) -> int:
    """Damage, check and count; the status is 1 where anything was found."""
    parser = argparse.ArgumentParser(description="Check damaged articles.")
    parser.add_argument("--count", type=int, default=5000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", type=Path)
    given = parser.parse_args(arguments)
    counts: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as folder:
        path, articles = new_content(Path(folder)), originals()
        for number in range(given.count):
            data = damage(Random(f"{given.seed} {number}"), articles)  # noqa: S311 - no secret
            outcome = check_article(path, data)
            counts.update(_counted(outcome))
            if not outcome.is_well:
                _tell(number, outcome, data, given.keep)
            if (number + 1) % _EVERY == 0:
                print(f"  {number + 1} of {given.count}", file=sys.stderr, flush=True)
    for name in ("articles", "with errors", "faults", *_BAD):
        print(f"{name:>24}: {counts[name]}")
    return 1 if any(counts[name] for name in _BAD) else 0


_BAD = ("failures", "hangs", "faults without a place")


def _counted(outcome: Outcome) -> dict[str, int]:
    bad = dict(zip(_BAD, (len(outcome.traces), int(outcome.hung), len(outcome.lost)), strict=True))
    return {
        "articles": 1,
        "with errors": int(outcome.errors > 0),
        "faults": outcome.faults,
    } | bad


def _tell(number: int, outcome: Outcome, data: bytes, keep: Path | None) -> None:
    what = "it hangs" if outcome.hung else "\n".join((*outcome.traces, *outcome.lost))
    print(f"article {number}: {what}", flush=True)
    if keep is not None:
        keep.mkdir(parents=True, exist_ok=True)
        (keep / f"{number}.md").write_bytes(data)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
