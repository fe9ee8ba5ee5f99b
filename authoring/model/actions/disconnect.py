"""Part a connector, hose or cable."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("disconnect", "unplug", "part"),
    says="Disconnect {what}.",
    what=Role("What is parted.", frozenset({Kind.ITEM})),
    effects=(Effect("where", "removed"),),
    reach=Reach.PLACE,
    parts_off=True,
)
