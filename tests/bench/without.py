"""Check a library without some of the rules, to measure what these cost; nobody but the bench can leave a rule out.

    python -m tests.bench.without RULE[,RULE...] LIBRARY
    python -m tests.bench.without --proof LIBRARY

`--proof` stands for the rules that walk the stories of things, which are those whose file imports `authoring.proof`.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Collection
from pathlib import Path

from authoring import rules
from authoring.cli.main import main
from authoring.rules import rule

_FOLDER = Path(rules.__path__[0])


def of_the_proof() -> set[str]:
    """Return the rules that walk the stories of things."""
    files = (path for path in _FOLDER.glob("*/*.py") if "\nfrom authoring.proof" in path.read_text(encoding="utf-8"))
    return {path.stem.replace("_", "-") for path in files}


def leave_out(left_out: Collection[str]) -> None:
    """Let the program run without these rules from now on; raises ValueError where one of them is none."""
    unknown = set(left_out) - rule.all_rules().keys()
    if unknown:
        message = f"no rule is called {', '.join(sorted(unknown))}"
        raise ValueError(message)
    whole = rule.rules_of

    def fewer(family: str) -> tuple[rule.Rule, ...]:
        return tuple(one for one in whole(family) if one.id not in left_out)

    rule.rules_of = fewer  # type: ignore[assignment]  # which keeps no answers, and is asked for none


if __name__ == "__main__":
    # What is found by fewer rules is kept nowhere, or the next check would take it for the whole.
    os.environ["XDG_CACHE_HOME"] = os.devnull
    leave_out(of_the_proof() if sys.argv[1] == "--proof" else sys.argv[1].split(","))
    sys.exit(main(["check", sys.argv[2]]))
