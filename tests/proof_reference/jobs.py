"""A whole library at random: a machine, one to three procedures of which one may carry out the others."""

from __future__ import annotations

import random
from dataclasses import dataclass
from typing import Any

from tests.proof_reference.damage import damage
from tests.proof_reference.decorations import decorate
from tests.proof_reference.machine import Machine, machine, some_when
from tests.proof_reference.story import Story
from tests.proof_reference.tasks import LOWER, RAISE, SMALL, TASKS, Task, lowered, raised, skip_by_others, under_bonnet
from tests.proof_reference.written import MAIN, library

Group = dict[str, Any]

_THIRD = "RW-400"


@dataclass(frozen=True)
class Made:
    """A library as the text of its files, and how many edits damaged it."""

    files: dict[str, bytes]
    damaged: int


def make(seed: int) -> Made:
    """Return the library of a seed: always the same one; half of them are damaged."""
    luck = random.Random(seed)  # noqa: S311  # a sample, no secret
    shop = machine(luck)
    # Some tasks have more rules than others; no job has one of them twice.
    tasks = list(dict.fromkeys(luck.choices(TASKS, k=luck.choice([1, 1, 2, 2, 3]))))
    others = _others(luck, shop, tasks)
    carried = [one["procedure"] for one in others if one["procedure"] == _THIRD]
    main = _told(luck, shop, MAIN, tasks, carried)
    if luck.random() < 0.25:
        main["covers"] = some_when(luck, shop.features)
        if _covers_none(shop, main["covers"]):
            del main["covers"]
    decorate(luck, shop, main, carried)
    procedures = [main, *others]
    edits = luck.choice([0, 1, 1, 2]) if luck.random() < 0.85 else 0
    done = sum(damage(luck, shop, luck.choice([main, main, *others])) for _ in range(edits))
    return Made(library(shop, procedures), done)


def _others(luck: random.Random, shop: Machine, tasks: list[Task]) -> list[Group]:
    others = []
    if skip_by_others in tasks:
        others += [_told(luck, shop, RAISE, [raised], []), _told(luck, shop, LOWER, [lowered], [])]
    if luck.random() < 0.5:
        task = luck.choice([*SMALL, under_bonnet])
        others.append(_told(luck, shop, _THIRD, [task], []))
    return others


def _told(luck: random.Random, shop: Machine, number: str, tasks: list[Task], carried: list[str]) -> Group:
    story = Story(luck, shop, carried)
    for task in tasks:
        task(story)
        if luck.random() < 0.5:
            story.together(0)
            story.off.clear()
    sections = story.sections() or [{"title": "Part 1", "steps": [{"do": [{"clean": "box"}]}]}]
    told = {key: value for key, value in story.told.items() if value}
    return {"procedure": number, "title": f"Do job {number}", "equipment": "hob", **told, "sections": sections}


def _covers_none(shop: Machine, covers: dict[str, list[str]]) -> bool:
    """Tell whether combinations that do not exist leave nothing of what is covered."""
    return any(
        all(set(covers.get(name, shop.features[name])) <= {value} for name, value in never.items())
        for never in shop.never
    )
