"""A thing of one side is put on a thing of the other side.

Left and right look alike on the bench, and often both fit; the groove of a left shaft then throws the oil out.
What is put on, into or in engagement with a thing, and what takes its place, is not of the left where that is of the
right, nor the other way round; in the place of a front, top or inside thing no rear, bottom or outside one is put.
What says no side itself is of the side of what it is `part-of`.

Wrong:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box}
  left-hub: {name: left hub, side: left}
  right-shaft: {name: right shaft, side: right}
```
```yaml procedure
sections:
  - title: Hub
    steps:
      - step: Remove the [left-hub].
        do:
          - remove: left-hub
      - step: Fit the [left-hub] on the [right-shaft].
        do:
          - fit: {what: left-hub, on: right-shaft}   #! wrong-side
```

Right:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box}
  left-hub: {name: left hub, side: left}
  left-shaft: {name: left shaft, side: left}
```
```yaml procedure
sections:
  - title: Hub
    steps:
      - step: Remove the [left-hub].
        do:
          - remove: left-hub
      - step: Fit the [left-hub] on the [left-shaft].
        do:
          - fit: {what: left-hub, on: left-shaft}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, of_action
from authoring.model.on_and_off import PUTS_ON, wholes
from authoring.model.procedure import Action, Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N16",)
ABOUT = ("side",)

_PLACES = PUTS_ON | {"trial-fit"}
_MATES = frozenset({"on", "in", "to", "with", "engages"})
_ACROSS = frozenset({frozenset({"left", "right"})})
_OPPOSITE = _ACROSS | {frozenset(pair) for pair in (("front", "rear"), ("top", "bottom"), ("inside", "outside"))}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that an action puts to, or in the place of, a thing of the other side."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            if action.kind.name in _PLACES:
                yield from _of(action, scope)


def _of(action: Action, scope: Scope) -> Iterator[Fault]:
    for place in of_action(action):
        if place.role in _MATES | {"replaces"}:
            there = _sided(place.name, scope)
            for name in action.what:
                here = _sided(name, scope)
                if here and there and _apart(here, there, place) and place.name not in _belongs_to(name, scope):
                    yield _fault(name, here, place, there)


def _apart(here: Item | FastenerGroup, there: Item | FastenerGroup, place: Mention) -> bool:
    """Tell whether two things are of opposite sides; what goes onto another may well be at its other end or face."""
    pair = frozenset({here.side, there.side})
    return pair in (_OPPOSITE if place.role == "replaces" else _ACROSS)


def _sided(name: str, scope: Scope) -> Item | FastenerGroup | None:
    """Return a thing that says its side, or the nearest that it is part of and that says one."""
    for one in wholes(name, scope.things):
        thing = scope.things[one].thing if one in scope.things else None
        if isinstance(thing, Item | FastenerGroup) and thing.side is not None:
            return thing
    return None


def _belongs_to(name: str, scope: Scope) -> set[str]:
    """Return what the equipment says that a thing is part of, on or among: it may be the left one there."""
    thing = scope.things[name].thing
    stated = (thing.on, thing.among) if isinstance(thing, FastenerGroup) else ()
    return {one for whole in (name, *stated) if whole is not None for one in wholes(whole, scope.things)}


def _fault(name: str, here: Item | FastenerGroup, place: Mention, there: Item | FastenerGroup) -> Fault:
    where = "takes the place of" if place.role == "replaces" else "is put to"
    return Fault(
        f'"{name}", whose side is {here.side}, {where} "{place.name}", whose side is {there.side}.',
        place.span,
        f'Name the thing whose side is {here.side}, or correct "side" in the equipment file.',
        tuple(Related(one.where.of("side"), f"the side of this is {one.side}") for one in (here, there)),
    )
