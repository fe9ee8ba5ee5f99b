"""Leave a place empty on purpose."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("leave",),
    says="Leave {what} empty.",
    what=Role("The place that stays empty.", frozenset({Kind.ITEM, Kind.FASTENERS})),
    effects=(Effect("where", "empty", perhaps=True),),
    reach=Reach.NOWHERE,
    empties=True,
)
