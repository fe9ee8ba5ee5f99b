"""Fasteners as they are named on a list: their size, and those of which a job needs new ones."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.plan import Plan
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.on_and_off import PUTS_ON
from authoring.model.things import FastenerGroup
from authoring.quantities.show import spell


def size_of(group: FastenerGroup) -> str:
    """Return thread, class and length, as far as they are stated."""
    told = [group.thread]
    if group.strength:
        told.append(f"class {group.strength}")
    if group.length is not None:
        told.append(f"{spell(group.length)} long")
    return ", ".join(told)


def new_fasteners(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[tuple[Text, ...]]:
    """Yield name, size and number of each group that the job throws away and puts on again."""
    wasted: dict[str, FastenerGroup] = {}
    for volume in plan.volumes:
        wording = wordings[volume.procedure.number]
        for _, action in volume.actions():
            for name in action.what:
                group = volume.scope.things[name].thing
                if not isinstance(group, FastenerGroup):
                    continue
                if action.kind.name == "discard":
                    wasted[name] = group
                elif action.kind.name in PUTS_ON and wasted.pop(name, None) is not None:
                    only = wording.applies(group.when)
                    told = f"{group.name}, new each time{f' ({only})' if only else ''}"
                    yield (Words(told),), (Words(size_of(group)),), (Words(str(group.count)),)
