"""Open something that stays on the machine."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("open", "unlatch", "swing open"),
    says="Open {what}.",
    what=Role("What is opened.", frozenset({Kind.ITEM})),
    effects=(Effect("lid", "open"),),
    reach=Reach.PLACE,
    parts_off=True,
)
