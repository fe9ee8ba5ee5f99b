"""Judge every variant over two processes; a variant's place in the list is the same in each of them."""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor

from msgspec import Struct

from tests.seeded.demo import Demo
from tests.seeded.every import KINDS, variants
from tests.seeded.judge import Judge, Verdict
from tests.seeded.sample import sample
from tests.seeded.variant import Variant

PROCESSES = 2


class Judged(Struct, frozen=True):
    """One variant as it is told of: its kind, where it stands, what was changed, and what became of it."""

    kind: str
    file: str
    line: int
    told: str
    verdict: Verdict


def judge_all(kinds: Sequence[str], every: int = 1) -> list[Judged]:
    """Return every so-manieth variant of these kinds, or of all where none is named, judged; in the table's order."""
    with ProcessPoolExecutor(PROCESSES) as pool:
        parts = list(pool.map(_part, range(PROCESSES), [tuple(kinds)] * PROCESSES, [every] * PROCESSES))
    found = {place: one for part in parts for place, one in part}
    return [found[place] for place in sorted(found)]


def _part(part: int, kinds: Sequence[str], every: int) -> list[tuple[int, Judged]]:
    demo = Demo()
    judge = Judge(demo)
    chosen = [one for one in variants(demo) if not kinds or one[0] in kinds]
    mine = list(enumerate(chosen))[::every][part::PROCESSES]
    return [(place, judged(kind, variant, judge, demo)) for place, (kind, variant) in mine]


def judged(kind: str, variant: Variant, judge: Judge, demo: Demo, *, compare: bool = True) -> Judged:
    """Return what became of one variant; an exception of ours leaves with the variant that brought it up."""
    line = line_of(variant, demo)
    try:
        verdict = judge.verdict(variant, compare=compare)
    except Exception as bug:
        bug.add_note(f"{kind}, {variant.file}:{line}: {variant.told}")
        raise
    return Judged(kind, variant.file, line, variant.told, verdict)


def line_of(variant: Variant, demo: Demo) -> int:
    """Return the line of the unchanged file at which a variant differs."""
    return demo.document(variant.file).places.whole(variant.path).line


def judge_sample(part: int, parts: int) -> list[Judged]:
    """Return the sample of one of several parts of the kinds, judged without comparing booklets."""
    demo = Demo()
    judge = Judge(demo)
    mine = list(KINDS.items())[part::parts]
    chosen = [(kind, one) for kind, make in mine for one in sample(kind, make(demo), demo)]
    return [judged(kind, variant, judge, demo, compare=False) for kind, variant in chosen]
