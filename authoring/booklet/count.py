"""What became of everything that came off, was opened or parted: the walk behind the closing count."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.booklet.modifications import made_by
from authoring.booklet.plan import Placed, Plan, Volume
from authoring.model.action_kinds import action_kinds
from authoring.model.changes import Modification
from authoring.model.fitments import together
from authoring.model.library import Thing
from authoring.model.procedure import Action
from authoring.model.things import FastenerGroup, Item


class Line(Struct):
    """One thing of the count: the steps in which it was undone, done again, held, discarded or left empty.

    `volume` is the procedure that undid it first.
    `count` is the number that the equipment states, None where it states none.
    `again` are those of `off` before which it was back already.
    `renewed` are the steps that put another part in its place, and that part's name; `exchanged` are the
    modifications that do so, the part's name and the steps that fit it.
    `trapped` are the steps that secure what was held; `kept` is the tool it lies in, empty where it was laid aside.
    """

    words: str
    count: int | None
    volume: Volume
    covers: tuple[str, ...]
    off: list[Placed] = []
    again: list[Placed] = []
    back: list[Placed] = []
    gone: list[Placed] = []
    held: list[Placed] = []
    trapped: list[Placed] = []
    empty: list[Placed] = []
    kept: str | None = None
    stays_off: list[Modification] = []
    renewed: list[tuple[Placed, str]] = []
    exchanged: list[tuple[Modification, str, list[Placed]]] = []


def count(plan: Plan) -> Iterator[Line]:
    """Yield a line for each thing that was undone or left empty, in the order of the steps."""
    walk = _Walk()
    for volume in plan.volumes:
        for placed, action in volume.actions():
            for name in action.what:
                walk.note(name, action, placed, volume)
        for change in made_by(volume):
            for name in change.leaves_out:
                if name in walk.lines:
                    walk.lines[name].stays_off.append(change)
            for name, part in change.replaces.items():
                if name in walk.lines:
                    fitted = [placed for placed, action in volume.actions() if _fits(part, action)]
                    walk.lines[name].exchanged.append((change, volume.scope.things[part].words, fitted))
    return (line for line in walk.lines.values() if line.off or line.empty)


class _Walk:
    """The lines so far; `waiting` are those that are held until a thing is put on."""

    def __init__(self) -> None:
        self.lines: dict[str, Line] = {}
        self.waiting: dict[str, list[Line]] = {}
        self.undone = {verb for kind in action_kinds().values() for verb in kind.undoes}

    def note(self, name: str, action: Action, placed: Placed, volume: Volume) -> None:
        """Take one action on one thing into the count."""
        kind = action.kind
        thing = volume.scope.things[name].thing
        old = self.lines.get(action.roles.get("replaces", ""))
        if old is not None:
            old.renewed.append((placed, volume.scope.things[name].words))
        if kind.name in self.undone or kind.empties:
            self._undo(name, action, placed, volume)
        elif kind.holds:
            if name in self.lines:
                self.lines[name].held.append(placed)
                self.waiting.setdefault(action.roles["until"], []).append(self.lines[name])
        elif _brings_back(action, thing):
            for line in self.waiting.pop(name, ()):
                line.trapped.append(placed)
            if name in self.lines:
                self.lines[name].back.append(placed)
        elif name in self.lines and kind.discards:
            self.lines[name].gone.append(placed)
        elif name in self.lines and kind.keeps:
            self.lines[name].kept = volume.scope.things[action.roles["in"]].words if "in" in action.roles else ""

    def _undo(self, name: str, action: Action, placed: Placed, volume: Volume) -> None:
        """Note that a thing comes off or is opened, or that its place stays empty."""
        line = self.lines.setdefault(name, _line(name, volume.scope.things[name].thing, volume))
        (line.empty if action.kind.empties else line.off).append(placed)
        if any(_before(one, placed, volume) for one in line.back):
            line.again.append(placed)


def _before(back: Placed, off: Placed, volume: Volume) -> bool:
    """Tell whether a thing was back at one step when another undid it: in one procedure, for some vehicle, on one way.

    A procedure that is carried out on the way is printed after the step that leads to it, so no order is known of two.
    """
    apart = back.shared == off.shared and back.number != off.number
    return back in volume.steps() and not apart and all(together(back.when, off.when).values())


def _fits(part: str, action: Action) -> bool:
    """Tell whether an action puts a part on; one with `replaces` has told so by itself."""
    return part in action.what and action.kind.counted and not action.kind.holds and "replaces" not in action.roles


def _line(name: str, thing: Thing, volume: Volume) -> Line:
    covers = thing.covers if isinstance(thing, Item) else ()
    over = tuple(volume.scope.things[one].words for one in covers)
    count = thing.count if isinstance(thing, FastenerGroup) else None
    return Line(volume.scope.things[name].words, count, volume, over)


def _brings_back(action: Action, thing: Thing) -> bool:
    """Tell whether an action puts a thing back as it belongs: fasteners only when they are tightened."""
    return action.kind.torque if isinstance(thing, FastenerGroup) else bool(action.kind.undoes)
