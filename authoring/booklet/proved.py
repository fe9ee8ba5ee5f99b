"""The tables of what the rules had to say: what was proved, what did not apply, what was left standing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.proof import Left, Verdicts
from authoring.booklet.words import Words


def counted(found: Verdicts) -> str:
    """Return in one sentence how many rules there were, and what became of them."""
    every = len(found.passed) + len(found.idle) + len(found.spoke)
    what = (
        f"{len(found.passed)} passed, {len(found.idle)} had nothing to look at, and {len(found.spoke)} found something"
    )
    return (
        f"Before this booklet was printed, {every} rules looked at the whole library, and none of them found an error. "
        f"For this booklet {what} that was left standing."
    )


def by_family(found: Verdicts) -> Table:
    """Return the table of what was proved, family by family, with how many rules stand behind it."""
    rows = tuple(
        (
            Cell((Words(family.subject, "strong"),)),
            Cell((Words(family.holds),)),
            Cell((Words(_counts(family.name, found)),)),
        )
        for family in found.families
    )
    note = "What is said to hold does so as far as the rules of its line passed."
    return Table("proved", "What was proved", ("About", "What holds", "Rules"), rows, (19, 56, 25), note=note)


def _counts(family: str, found: Verdicts) -> str:
    told = (("passed", found.passed), ("not applicable", found.idle), ("left something", found.spoke))
    counts = [(sum(rule.family == family for rule in some), words) for words, some in told]
    return ", ".join(f"{count} {words}" for count, words in counts if count)


def not_applicable(found: Verdicts, none: Mapping[str, str]) -> Table:
    """Return the table of the rules that had nothing to look at, and of what there is nothing; `none` says so."""
    why: dict[tuple[str, ...], list[str]] = {}
    for rule in found.idle:
        why.setdefault(rule.about, []).append(rule.id)
    order = list(none)
    rows = tuple(
        (Cell((Words(" ".join(none[subject] for subject in about)),)), Cell((Words(", ".join(ids)),)))
        for about, ids in sorted(why.items(), key=lambda one: order.index(one[0][0]))
    )
    heads = ("What there is nothing of", "Rules that had nothing to look at")
    return Table("idle", "Not applicable to this booklet", heads, rows, (48, 52), empty="Every rule had something.")


def left_standing(left: Sequence[Left]) -> tuple[Table, Table]:
    """Return the tables of what the author excepts, with the reasons, and of what was left standing without one.

    What is said of several places in the same words is told once.
    """
    excepted = tuple(dict.fromkeys(_row(one, one.why) for one in left if one.why))
    stands = tuple(dict.fromkeys(_row(one, one.vehicles or "all") for one in left if not one.why))
    widths = (26, 44, 30)
    return (
        Table(
            "excepted",
            "Excepted by the author",
            ("Rule", "What it says", "Why it may stand"),
            excepted,
            widths,
            "Nothing.",
        ),
        Table(
            "left-standing",
            "Found, and left standing",
            ("Rule", "What it says", "Which vehicles"),
            stands,
            widths,
            "Nothing.",
        ),
    )


def _row(one: Left, more: str) -> tuple[Cell, ...]:
    return Cell((Words(one.rule, "strong"),)), Cell((Words(one.message),)), Cell((Words(more),))
