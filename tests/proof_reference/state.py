"""The state of one machine in the middle of a job: what became of each side of each thing, and what was done."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping
from typing import Any, NamedTuple

from tests.proof_reference.table import OFF
from tests.proof_reference.told import Group, listed

Selection = Mapping[str, str]


class At(NamedTuple):
    """A place in a job: the line of the step at top, and the procedure and line of the innermost step itself."""

    top: int
    number: str
    line: int


class Fact(NamedTuple):
    """The state of one side of a thing, and how it came about: by which action, and where.

    What a machine comes with has no action. `new` is what took the place of a thing that was replaced, or what traps
    a thing that is held.
    """

    value: str
    verb: str
    at: At
    new: str = ""


class State:
    """One machine in the middle of a job.

    `marks` tell of the job: which steps were done or skipped, what was decided, which hold points were passed.
    `held` tells in which order a thing was supported and locked.
    """

    def __init__(self) -> None:
        """Take a machine as it comes, about which nothing was done yet."""
        self.sides: dict[tuple[str, str], Fact] = {}
        self.marks: set[tuple[str, ...]] = set()
        self.held: dict[str, tuple[str, ...]] = {}

    def copy(self) -> State:
        """Return a machine in the same state, whose future is its own."""
        other = State()
        other.sides = dict(self.sides)
        other.marks = set(self.marks)
        other.held = dict(self.held)
        return other

    def key(self) -> Hashable:
        """Return what tells this state from others."""
        return frozenset(self.sides.items()), frozenset(self.marks), tuple(self.held.items())

    def is_open(self, thing: str) -> bool:
        """Tell whether a thing was opened, and neither closed nor put on since."""
        return self.value(thing, "lid") == "open" and (thing, "back") not in self.sides

    def value(self, thing: str, side: str) -> str:
        """Return the state of a side of a thing, empty where nothing is known of it."""
        fact = self.sides.get((thing, side))
        return fact.value if fact else ""


class Machine:
    """The things of one vehicle: those of the equipment that it has, and the parts of the stock."""

    def __init__(self, equipment: Group, selection: Selection) -> None:
        """Take from the equipment what the vehicle of this selection has."""
        self.items: dict[str, Group] = self._here(equipment, "items", selection)
        self.fasteners: dict[str, Group] = self._here(equipment, "fasteners", selection)
        self.fluids: dict[str, Group] = self._here(equipment, "fluids", selection)
        self.things = {**self.items, **self.fasteners, **self.fluids}
        heads = ("items", "fasteners", "fluids")
        # What a machine does not have is still no part of the stock.
        self.missing = {name for head in heads for name in equipment.get(head, {}) if name not in self.things}

    @staticmethod
    def _here(equipment: Group, head: str, selection: Selection) -> dict[str, Group]:
        return {name: one for name, one in equipment.get(head, {}).items() if holds(one.get("when"), selection)}

    def wholes(self, thing: str) -> Iterator[str]:
        """Yield what a thing is part of, and what that is part of."""
        while thing in self.items and "part-of" in self.items[thing]:
            thing = self.items[thing]["part-of"]
            yield thing

    def parts(self, thing: str) -> list[str]:
        """Return what is directly part of a thing."""
        return [name for name, one in self.items.items() if one.get("part-of") == thing]

    def fasteners_on(self, item: str) -> list[str]:
        """Return the fasteners on an item."""
        return [name for name, one in self.fasteners.items() if one.get("on") == item]

    def is_plug(self, thing: str) -> bool:
        """Tell whether a thing drains or fills a fluid."""
        return bool({"drains", "fills"} & set(self.things[thing]))

    def covered_by(self, thing: str) -> list[str]:
        """Return the things that an item covers and that this machine has."""
        covered = self.items[thing].get("covers", []) if thing in self.items else []
        return [one for one in covered if one in self.things]

    def side(self, thing: str) -> str:
        """Return the side of a thing, or of what it is part of; empty where it has none."""
        sides = [self.things[one].get("side", "") for one in (thing, *self.wholes(thing)) if one in self.things]
        return next((one for one in sides if one), "")

    def off(self, thing: str, state: State) -> bool:
        """Tell whether a thing, or what it is part of, is not on the machine."""
        if thing not in self.things:
            return state.value(thing, "where") in OFF | {""}
        return any(state.value(one, "where") in OFF for one in (thing, *self.wholes(thing)))

    def shut(self, cover: str, state: State) -> bool:
        """Tell whether a cover is on and not open, and so is all that it is part of."""
        chain = (cover, *self.wholes(cover))
        return not self.off(cover, state) and not any(state.value(one, "lid") == "open" for one in chain)

    def shut_over(self, thing: str, state: State) -> list[str]:
        """Return the covers that are on over a thing."""
        under = {thing, *self.wholes(thing)}
        covering = [name for name, one in self.items.items() if under & set(one.get("covers", []))]
        return [one for one in covering if one != thing and self.shut(one, state)]

    def shut_beside(self, thing: str, state: State) -> list[str]:
        """Return the covers that are on over a thing at the bench: those that are part of the same thing as it is."""
        found = []
        for whole in self.wholes(thing):
            if state.value(whole, "where") not in OFF:
                continue
            beside = [name for name in self.items if whole in self.wholes(name) and thing in self.covered_by(name)]
            for cover in beside:
                wholes = list(self.wholes(cover))
                chain = [cover, *wholes[: wholes.index(whole)]]
                gone = any(state.value(one, "where") in OFF or state.value(one, "lid") == "open" for one in chain)
                found += [] if gone else [cover]
        return found


def holds(when: Group | None, selection: Selection) -> bool:
    """Tell whether a condition holds for a selection."""
    for feature, values in when.items() if when else ():
        if feature in selection and selection[feature] not in listed(values):
            return False
    return True


def things_of(value: Mapping[str, Any]) -> list[str]:
    """Return the things that an action names."""
    return listed(value["what"]) if "what" in value else []
