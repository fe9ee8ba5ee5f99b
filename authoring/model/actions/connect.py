"""Join a connector, hose or cable."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import CARRIED, Effect, Reach

ACTION = ActionKind(
    words=("connect", "plug in", "join"),
    says="Connect {what}.",
    what=Role("What is joined.", frozenset({Kind.ITEM})),
    effects=(Effect("where", "fitted"), CARRIED),
    reach=Reach.PLACE,
    undoes=("disconnect", "support"),
    handles=True,
)
