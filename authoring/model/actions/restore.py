"""Give a source of energy back after it was isolated."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("restore", "switch on", "turn on", "reconnect"),
    says="Restore {what}.",
    what=Role("The switch, tap or plug that cut it off.", frozenset({Kind.ITEM})),
    effects=(Effect("energy", "live"),),
    reach=Reach.THING,
    undoes=("isolate",),
)
