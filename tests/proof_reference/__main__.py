"""Hold the checker against the reference on random libraries, and print where they differ and how often a rule fired.

`python -m tests.proof_reference` looks at all of them, `python -m tests.proof_reference 100 200` at those seeds alone.
With a rule behind that, the libraries on which the two differ in this rule are shrunk before they are printed.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterable, Sequence

from tests.proof_reference.compare import SEEDS, Compared, compare, compare_files, rules_in
from tests.proof_reference.reference import RULES
from tests.proof_reference.shrink import shrunk


def main(words: Sequence[str]) -> int:
    """Print the table of rules; return 1 where checker and reference differ anywhere."""
    first, last = (int(words[0]), int(words[1])) if len(words) > 1 else (0, SEEDS)
    compared = [compare(seed) for seed in range(first, last)]
    differing = [one for one in compared if list(one.differences())]
    for one in differing:
        if not words[2:]:
            _say([one.told()])
        elif words[2] in one.differing():
            _say([f"seed {one.seed}, shrunk", compare_files(shrunk(one.files, {words[2]})).told()])
    _say(_table(compared))
    return 1 if differing else 0


def _table(compared: list[Compared]) -> Iterable[str]:
    fired = Counter(rule for one in compared for rule in rules_in(one))
    wrong = Counter(rule for one in compared for rule in one.differing())
    yield f"{'rule':24}{'fired in':>10}{'agreed in':>11}  of {len(compared)} libraries"
    for rule in RULES:
        yield f"{rule:24}{fired[rule]:10}{len(compared) - wrong[rule]:11}"
    yield f"{sum(one.good for one in compared)} libraries are good"


def _say(lines: Iterable[str]) -> None:
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
