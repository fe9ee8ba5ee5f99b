"""Take a support, a chock or a prop away."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import HELD_UP, Effect, Reach

ACTION = ActionKind(
    words=("release", "take away", "take out", "free", "unprop"),
    says="Release {what}.",
    what=Role("What was held up or kept from rolling.", frozenset({Kind.ITEM})),
    effects=(Effect("hold", "free", only=HELD_UP), Effect("lock", "unlocked", only=frozenset({"locked"}))),
    reach=Reach.NOWHERE,
    undoes=("support", "lock"),
)
