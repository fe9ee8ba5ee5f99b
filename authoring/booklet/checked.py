"""The page of what was checked: what was proved, under which assumptions, and what was left standing (N20)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.booklet.assumed import assumed
from authoring.booklet.blocks import Block, Chapter
from authoring.booklet.plan import Plan
from authoring.booklet.policy import policy_tables
from authoring.booklet.proof import Proof, verdicts
from authoring.booklet.proved import by_family, counted, left_standing, not_applicable
from authoring.booklet.strip import strip
from authoring.booklet.told_apart import told_apart
from authoring.booklet.wording import Wording
from authoring.booklet.words import Paragraph, Words
from authoring.model.subjects import SUBJECTS, held

_MODEL = (
    "What passed is proved under the stated model: this booklet is consistent with what its author stated, and with "
    "what is taken as given below. That does not say that the job is safe. What was stated wrongly, or not at all, no "
    "rule can see."
)


def checked(proof: Proof, plan: Plan, wordings: Mapping[str, Wording], work: Sequence[Chapter]) -> Chapter:
    """Return the chapter about the checks; only what concerns the files of this booklet is listed.

    `work` are the chapters of the steps, as they are printed.
    """
    files = frozenset(_files(plan))
    there = held(plan.library, [volume.procedure for volume in plan.volumes], plan.selection)
    left = [one for one in proof.left if one.file in files]
    found = verdicts(proof, left, there)
    blocks: tuple[Block, ...] = (
        Paragraph((Words(f"{counted(found)} {_MODEL}"),)),
        by_family(found),
        *left_standing(left),
        assumed(plan, wordings, work, there),
        *told_apart(plan, wordings),
        *strip(plan, wordings[plan.main.procedure.number]),
        *policy_tables(plan.library.shop, plan.library.stock),
        not_applicable(found, {name: subject.none for name, subject in SUBJECTS.items()}),
    )
    return Chapter("proof", "", "What was checked", 1, blocks)


def _files(plan: Plan) -> Iterator[str]:
    library = plan.library
    for thing in (library.shop, library.stock, plan.main.scope.equipment):
        if thing is not None:
            yield thing.where.document.file
    for volume in plan.volumes:
        yield volume.procedure.where.document.file
