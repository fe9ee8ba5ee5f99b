"""Close something that was opened."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("close", "latch", "swing shut", "shut"),
    says="Close {what}.",
    what=Role("What is closed.", frozenset({Kind.ITEM})),
    effects=(Effect("lid", "closed"),),
    reach=Reach.PLACE,
    undoes=("open",),
)
