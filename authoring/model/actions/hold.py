"""Put something up and keep it there by an aid, not yet secured, until the next part traps it."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

_FITTED = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})

ACTION = ActionKind(
    words=("hold", "keep", "stick", "hang", "put up"),
    says="Hold {what} in its place.",
    what=Role("What is kept in its place.", _FITTED),
    effects=(Effect("where", "held"),),
    reach=Reach.PLACE,
    roles={
        "by": Role("The aid that keeps it.", frozenset({Kind.TOOL, Kind.CONSUMABLE})),
        "until": Role("The thing whose fitting traps it.", _FITTED, required=True, silent=True),
    },
    counted=True,
    undoes=("remove",),
    handles=True,
    holds=True,
)
