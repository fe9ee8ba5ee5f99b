"""Stop an engine or mechanism."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("stop", "switch off"),
    says="Stop {what}.",
    what=Role("What is stopped.", frozenset({Kind.ITEM})),
    effects=(Effect("motion", "stopped"),),
    reach=Reach.NOWHERE,
    stops=True,
)
