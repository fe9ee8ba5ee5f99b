"""What is meant to be open while an engine runs: whether one runs where it is opened, or only later."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.plan import Volume
from authoring.model.procedure import Action
from authoring.model.things import FastenerGroup

_NOW = "meant to be open while the engine runs"
_LATER = "later, while the engine runs, it is meant to be open"


def meant_open(name: str, opening: Action, volume: Volume) -> str:
    """Return the words for a thing that `opening` opens; none where it is shut again before anything runs."""
    opened = False
    for action, running in _course(volume):
        if action is opening:
            if running:
                return _NOW
            opened = True
        elif opened and running:
            return _LATER
        elif opened and name in action.what and _shuts(name, action, opening, volume):
            return ""
    return ""


def _shuts(name: str, action: Action, opening: Action, volume: Volume) -> bool:
    group = isinstance(volume.scope.things[name].thing, FastenerGroup)
    # A plug that is screwed in by hand has shut its hole before it is tightened.
    screwed = action.kind.torque or (action.kind.handles and not action.kind.parts_off)
    return screwed if group else opening.kind.name in action.kind.undoes


def _course(volume: Volume) -> Iterator[tuple[Action, bool]]:
    """Yield each action in order, and whether anything runs then: an action set it going, or the text says so."""
    going: set[str] = set()
    for placed in volume.steps():
        for need in (*placed.section.needs, *placed.step.needs):
            if need.state == "running":
                going.add(need.thing)
            elif need.state in {"stopped", "isolated"}:
                going.discard(need.thing)
        for action in placed.step.actions:
            if action.kind.runs:
                going.update(action.what)
            elif action.kind.stops:
                going.difference_update(action.what)
            yield action, bool(going)
