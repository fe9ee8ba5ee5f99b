"""Print what the checks catch of every single fault in the demo library: `python -m tests.seeded`."""

from __future__ import annotations

import argparse
import sys
import time
from collections import Counter
from collections.abc import Iterable, Sequence

from tests.seeded.demo import Demo
from tests.seeded.every import KINDS, variants
from tests.seeded.judge import Outcome
from tests.seeded.run import Judged, judge_all, judge_sample
from tests.seeded.tally import Kept, keep, table, tallies


def main(arguments: Sequence[str]) -> None:
    """Judge the variants, and print the table and what was asked for besides."""
    options = _options(arguments)
    begin = time.monotonic()
    found = judge_all(options.kind, options.every)
    counted = tallies((one.kind, one.verdict) for one in found)
    there = sum(1 for kind, _ in variants(Demo()) if not options.kind or kind in options.kind)
    lines = [*table(counted), "", f"{len(found)} of {there} variants in {time.monotonic() - begin:.0f} s"]
    if options.missed:
        lines += ["", *_listed(found, Outcome.MISSED)]
    if options.text:
        lines += ["", *_listed(found, Outcome.TEXT)]
    if options.by:
        lines += ["", *_by(found)]
    sys.stdout.write("\n".join(lines) + "\n")
    if options.keep:
        keep(Kept(there, counted, tallies((one.kind, one.verdict) for one in judge_sample(0, 1))))


def _options(arguments: Sequence[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="tests.seeded", description=__doc__)
    parser.add_argument("--kind", action="append", default=[], choices=KINDS, help="judge this kind only, or several")
    parser.add_argument("--every", type=int, default=1, help="judge only each so-manieth variant")
    parser.add_argument("--missed", action="store_true", help="list the faults that nothing tells of")
    parser.add_argument("--text", action="store_true", help="list those of which only text against action tells")
    parser.add_argument("--by", action="store_true", help="count what told of them: rules and criteria")
    parser.add_argument("--keep", action="store_true", help="write the numbers that the suite holds later runs against")
    options = parser.parse_args(arguments)
    if options.keep and (options.kind or options.every > 1):
        parser.error("the numbers that are kept are those of all variants")
    return options


def _listed(found: Iterable[Judged], outcome: Outcome) -> list[str]:
    return [f"{one.file}:{one.line}: {one.kind}: {one.told}" for one in found if one.verdict.outcome is outcome]


def _by(found: Iterable[Judged]) -> list[str]:
    counted = Counter((one.verdict.outcome.value, by) for one in found for by in one.verdict.by)
    return [f"{number:5d}  {outcome}: {by}" for (outcome, by), number in counted.most_common()]


if __name__ == "__main__":
    main(sys.argv[1:])
