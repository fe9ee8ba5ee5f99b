"""Keep something from turning or moving."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("lock", "pin", "block", "hold"),
    says="Lock {what}.",
    what=Role("What is kept from moving.", frozenset({Kind.ITEM})),
    effects=(Effect("lock", "locked"),),
    reach=Reach.THING,
    roles={
        "with": Role("What locks it.", frozenset({Kind.TOOL})),
    },
)
