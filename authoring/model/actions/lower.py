"""Let the machine or a part of it down."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("lower", "let down"),
    says="Lower {what}.",
    what=Role("What comes down.", frozenset({Kind.ITEM})),
    effects=(Effect("height", "lowered"), Effect("hold", "free", perhaps=True)),
    reach=Reach.NOWHERE,
    undoes=("raise", "support"),
)
