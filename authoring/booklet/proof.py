"""What was checked before this booklet was printed, and what was left standing and why (requirement N20)."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.booklet.blocks import Block, Cell, Chapter, Table
from authoring.booklet.plan import Plan
from authoring.booklet.policy import policy_tables
from authoring.booklet.words import Paragraph, Words

_MODEL = (
    "Before this booklet was printed, the rules below looked at the whole library, and none of them found an error. "
    "That says that the booklet is consistent with what its author stated. It does not say that the job is safe: "
    "what was stated wrongly, or not at all, no rule can see."
)


class Left(Struct, frozen=True):
    """A finding that did not stop the booklet: its file, its rule, what it says, and why it may stand, if said."""

    file: str
    rule: str
    message: str
    why: str


class Proof(Struct, frozen=True):
    """What the checks had to say: the families of rules that ran, and what was left standing."""

    families: tuple[str, ...]
    left: tuple[Left, ...]


def proof_chapter(proof: Proof, plan: Plan) -> Chapter:
    """Return the chapter about the checks; only what concerns the files of this booklet is listed."""
    files = frozenset(_files(plan))
    rows = tuple(
        (Cell((Words(one.rule, "strong"),)), Cell((Words(one.message),)), Cell((Words(one.why or "not said"),)))
        for one in proof.left
        if one.file in files
    )
    ran = f"What the rules looked at: {', '.join(proof.families)}."
    table = Table(
        id="left-standing",
        title="Found, and left standing",
        heads=("Rule", "What it says", "Why it may stand"),
        rows=rows,
        widths=(26, 44, 30),
        empty="Nothing.",
    )
    policy = policy_tables(plan.library.shop, plan.library.stock)
    blocks: tuple[Block, ...] = (Paragraph((Words(_MODEL),)), Paragraph((Words(ran),)), table, *policy)
    return Chapter("proof", "", "What was checked", 1, blocks)


def _files(plan: Plan) -> Iterator[str]:
    library = plan.library
    for thing in (library.shop, library.stock, plan.main.scope.equipment):
        if thing is not None:
            yield thing.where.document.file
    for volume in plan.volumes:
        yield volume.procedure.where.document.file
