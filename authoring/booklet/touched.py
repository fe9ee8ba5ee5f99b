"""What the hand must know of the things that a step touches: where, how they come apart, what stays untouched."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.manner import SIDES
from authoring.booklet.phrases import all_the, aside, in_turn
from authoring.booklet.plan import Placed, Volume
from authoring.booklet.running import meant_open
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Bullets, Named, Paragraph, Text, Words
from authoring.model.fitments import together
from authoring.model.library import Thing
from authoring.model.procedure import Choice, Step
from authoring.model.things import FastenerGroup, Item, Part
from authoring.quantities.show import spell

_REUSE = {"always": "used again", "never": "never used again", "if": "used again on a condition"}


def critical(step: Step, volume: Volume) -> Iterator[Aside]:
    """Yield a line for each thing of a step that must not fail, wherever it is touched."""
    for name in dict.fromkeys(name for action in step.actions for _, name in action.names()):
        for thing in _candidates(name, volume):
            if thing.critical is not None:
                yield aside("Critical", Words(thing.name, "strong"), f": {thing.critical}")


def _candidates(name: str, volume: Volume) -> Iterator[Item | Part]:
    thing = volume.scope.things[name].thing
    if isinstance(thing, Item | Part):
        yield thing
    elif isinstance(thing, Choice):
        for one in thing.parts:
            for equal in (one.part, *one.equal) if volume.holds(one.when) else ():
                yield from _candidates(equal, volume)


def where(placed: Placed, volume: Volume, shown: set[str]) -> Iterator[Aside]:
    """Yield where a thing is, at the first step that names it."""
    for name in dict.fromkeys(_named(placed.step)):
        thing = volume.scope.things[name].thing
        if isinstance(thing, Item | FastenerGroup) and name not in shown:
            told = ", ".join(_where(thing, placed.section.bench, volume))
            if told:
                shown.add(name)
                yield aside("Where", f"{thing.name}: {told}", close=True)


def _named(step: Step) -> Iterator[str]:
    """Yield everything that the hand has to find: what is near, what is touched, and what it must go into."""
    yield from step.near
    for action in step.actions:
        for _, name in action.names():
            yield name
        for one in action.manner.engages:
            yield one.other


def _where(thing: Item | FastenerGroup, bench: str | None, volume: Volume) -> Iterator[str]:
    place = (thing.place or "") if isinstance(thing, Item) else ""
    if place:
        yield place
    if thing.side is not None and thing.side not in f"{thing.name} {place}":
        yield SIDES[thing.side]
    whole = thing.part_of if isinstance(thing, Item) else None
    if whole is not None and whole != bench:
        words = volume.scope.things[whole].words
        if words not in place:
            yield f"part of the {words}"


def handled(step: Step, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[Aside]:
    """Yield how things come apart, what stays untouched, what is meant to be open, and whether it is used again."""
    yield from _release(step, volume, wording)
    alone = dict.fromkeys([*step.leave, *_beside(step, volume)])
    if alone:
        yield _left_alone(list(alone), volume, shown)
    yield from _reuse(step, volume)
    yield from _open(step, volume)


def _open(step: Step, volume: Volume) -> Iterator[Aside]:
    """Yield why a thing that the step opens stays open while an engine runs, now or later."""
    for action in step.actions:
        for name in action.what if action.kind.parts_off or action.kind.loosens else ():
            thing = volume.scope.things[name].thing
            if isinstance(thing, Item | FastenerGroup) and thing.open_while_running is not None:
                told = meant_open(name, action, volume)
                if told:
                    yield aside("Open", f"{thing.name}: {told}. {thing.open_while_running}", close=True)


def _reuse(step: Step, volume: Volume) -> Iterator[Aside]:
    """Yield whether a thing is used again, where it comes off and where it goes back; not where it is discarded."""
    discarded = {name for action in step.actions if action.kind.discards for name in action.what}
    touched = (name for action in step.actions if action.kind.handles for name in action.what)
    for name in dict.fromkeys(touched):
        thing = volume.scope.things[name].thing
        if isinstance(thing, Item | FastenerGroup) and thing.reuse is not None and name not in discarded:
            why = f". {thing.reuse.say}" if thing.reuse.say else ""
            yield aside("Reuse", f"{thing.name}: {_REUSE[thing.reuse.rule]}{why}", close=True)


def _release(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield each release sequence once, with the things that come apart by it."""
    found: dict[tuple[str, ...], list[str]] = {}
    for action in step.actions:
        for name in action.what if action.kind.parts_off else ():
            thing = volume.scope.things[name].thing
            if isinstance(thing, Item) and thing.release:
                found.setdefault(thing.release, []).append(name)
    for moves, names in found.items():
        each = " each" if len(names) > 1 else ""
        head = Paragraph((*all_the(names, wording), Words(f",{each} in this order:" if each else ", in this order:")))
        yield Aside("Release", (head, Bullets(tuple((Words(move),) for move in moves), ordered=True)), close=True)


def _beside(step: Step, volume: Volume) -> Iterator[str]:
    """Yield the groups that are never loosened and sit on what the step takes off or loosens."""
    if not volume.untouched:
        return
    for action in step.actions:
        for name in action.what if action.kind.loosens else ():
            thing = volume.scope.things[name].thing
            near = (thing.on, thing.among) if isinstance(thing, FastenerGroup) else (name,)
            beside = (one for item in near if item for one in volume.untouched.get(item, ()) if one != name)
            yield from (one for one in beside if _meet(volume.scope.things[one].thing, step))


def _meet(group: Thing, step: Step) -> bool:
    """Tell whether some vehicle has both the group and the step."""
    return not isinstance(group, FastenerGroup) or all(together(step.when, group.when).values())


def _left_alone(names: list[str], volume: Volume, shown: set[str]) -> Aside:
    """Return what is not touched; its reason stands where it is first left alone."""
    told: list[Text] = []
    for name in names:
        thing = volume.scope.things[name]
        first = f"untouched {name}" not in shown
        shown.add(f"untouched {name}")
        group = thing.thing if isinstance(thing.thing, FastenerGroup) else None
        # Count, thread and length tell them from their neighbours.
        many = f"{group.count} × " if group is not None else ""
        long = f", {spell(group.length)} long" if group is not None and group.length is not None else ""
        size = f", {group.thread}{long}" if group is not None else ""
        why = f": {group.untouched}" if group is not None and group.untouched and first else ""
        told.append((Words(many), Named(thing.words), Words(f"{size}{why}")) if group else (Named(thing.words),))
    return Aside("Leave alone", (Paragraph(told[0] if len(told) == 1 else in_turn(told, "; ")),), close=True)
