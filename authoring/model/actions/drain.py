"""Let a fluid out."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("drain", "let out"),
    says="Drain {what}.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    effects=(Effect("fluid", "drained"),),
    reach=Reach.NOWHERE,
    roles={
        "into": Role("What catches it.", frozenset({Kind.TOOL})),
    },
    lets_out=True,
)
