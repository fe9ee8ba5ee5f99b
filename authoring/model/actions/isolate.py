"""Cut a source of energy off and keep it off."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("isolate", "switch off", "turn off"),
    says="Isolate {what}.",
    what=Role("The switch, tap or plug that cuts it off.", frozenset({Kind.ITEM})),
    effects=(Effect("energy", "isolated"),),
    reach=Reach.THING,
)
