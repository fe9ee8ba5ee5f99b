"""What is meant to be open while an engine runs: whether one runs where it is opened, or only later."""

from __future__ import annotations

from authoring.booklet.plan import Volume
from authoring.model.procedure import Action
from authoring.model.running import going
from authoring.model.things import FastenerGroup

_NOW = "meant to be open while the engine runs"
_LATER = "later, while the engine runs, it is meant to be open"


def meant_open(name: str, opening: Action, volume: Volume) -> str:
    """Return the words for a thing that `opening` opens; none where it is shut again before anything runs."""
    opened = False
    for one in going(((placed.section, placed.step) for placed in volume.steps()), volume.procedure.needs):
        if one.action is opening:
            if one.running:
                return _NOW
            opened = True
        elif opened and one.running:
            return _LATER
        elif opened and name in one.action.what and _shuts(name, one.action, opening, volume):
            return ""
    return ""


def _shuts(name: str, action: Action, opening: Action, volume: Volume) -> bool:
    group = isinstance(volume.scope.things[name].thing, FastenerGroup)
    # A plug that is screwed in by hand has shut its hole before it is tightened.
    screwed = action.kind.torque or (action.kind.handles and not action.kind.parts_off)
    return screwed if group else opening.kind.name in action.kind.undoes
