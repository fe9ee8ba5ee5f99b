"""What is not on the machine as it comes, and is there only once the job has brought it."""

from __future__ import annotations

from authoring.model.specification import ALWAYS, When
from authoring.model.things import FastenerGroup, Item
from authoring.proof.job import Job


def brought(thing: Item | FastenerGroup, job: Job) -> list[When]:
    """Return for which machines the job brings a thing: a modification adds it, or the job decides whether it is there.

    What the job decides says nothing of the machine as it comes; another rule tells of equipment that asks for it.
    """
    changes = [change for one in job.ways.procedures for change in one.modifications.values()]
    added = [change.when for change in changes if thing.id in change.adds]
    equipment = job.scope.equipment
    decided = equipment is not None and not thing.when.keys() <= equipment.features.keys()
    return [*added, *([ALWAYS] if decided else ())]
