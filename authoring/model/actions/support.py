"""Take the weight of the machine or of an item."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("support", "hold up", "chock", "prop"),
    says="Support {what}.",
    what=Role("What is held up or kept from rolling.", frozenset({Kind.ITEM})),
    effects=(Effect("hold", "supported"),),
    reach=Reach.NOWHERE,
)
