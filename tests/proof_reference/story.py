"""A sound job at random: things come off in the right order, something is done, and all goes back the same way.

A job is written as sections of steps, as a procedure's file has them, without any text for the steps:
the texts are then made from the actions.
"""

from __future__ import annotations

import random
from typing import Any

from tests.proof_reference.machine import Machine

Group = dict[str, Any]


class Story:
    """The steps of one job so far, and what must still be done to put together what it took apart."""

    def __init__(self, luck: random.Random, machine: Machine, carried: list[str]) -> None:
        """Begin a job on a machine; `carried` are the procedures that it may carry out."""
        self.luck = luck
        self.machine = machine
        self.carried = carried
        self.steps: list[Group] = []
        self.later: list[list[Group]] = []
        self.off: set[str] = set()
        self.told: Group = {"values": {}}

    def step(self, thing: str, *actions: Group, **keys: Any) -> Group:
        """Return a step for the vehicles that have a thing."""
        when = self.machine.when(thing)
        return {**({"when": when} if when else {}), **keys, "do": list(actions)}

    def do(self, thing: str, *actions: Group, **keys: Any) -> None:
        """Do a step now."""
        self.steps.append(self.step(thing, *actions, **keys))

    def afterwards(self, *steps: Group) -> None:
        """Do some steps when the job is put together again, before those that were promised earlier."""
        self.later.append(list(steps))

    def together(self, depth: int) -> None:
        """Put together again all that was taken apart since `depth` promises."""
        while len(self.later) > depth:
            self.steps += self.later.pop()

    def reach(self, thing: str) -> None:
        """Open or take off whatever covers a thing."""
        for cover in self.machine.covers_of(thing):
            if cover not in self.off:
                self.reach(cover)
                self.off.add(cover)
                self._uncover(cover)

    def begin(self, *things: str) -> None:
        """Put all together first where one of these is off already, then open whatever covers them."""
        if self.off & set(things):
            self.together(0)
            self.off.clear()
        for thing in things:
            self.reach(thing)
        self.off |= set(things)

    def _uncover(self, cover: str) -> None:
        if cover == "plate":
            self.unbolt("plate")
        elif self.luck.random() < 0.6:
            self.do(cover, {"open": cover})
            self.afterwards(self.step(cover, {"close": cover}))
        else:
            self.do(cover, {"remove": cover})
            self.afterwards(self.step(cover, {"fit": cover}))

    def unbolt(self, item: str, *, replaced_by: str = "") -> None:
        """Take an item off with the fasteners that hold it."""
        bolts = [
            name
            for name, one in self.machine.fasteners.items()
            if one["on"] == item and not {"drains", "fills", "untouched"} & set(one)
        ]
        if self.luck.random() < 0.3:
            self.do(item, {"loosen": bolts})
        self.do(item, *({"remove": one} for one in bolts))
        self.do(item, {"remove": item})
        back: Group = {"fit": item}
        if replaced_by:
            self.do(item, {"discard": item})
            back = {"fit": {"what": replaced_by, "replaces": item}}
        self.afterwards(
            self.step(item, back, *({"start": one} for one in bolts)),
            *(self.step(item, {"tighten": one}) for one in bolts),
        )

    def sections(self) -> list[Group]:
        """Return the whole job in sections of a few steps."""
        self.together(0)
        steps = self.steps
        sections: list[Group] = []
        while steps:
            count = self.luck.randint(2, 6)
            sections.append({"title": f"Part {len(sections) + 1}", "steps": steps[:count]})
            steps = steps[count:]
        return sections
