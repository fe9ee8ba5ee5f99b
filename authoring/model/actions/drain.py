"""Let a fluid out."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("drain", "let out"),
    says="Drain {what}.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    roles={
        "into": Role("What catches it.", frozenset({Kind.TOOL})),
    },
    lets_out=True,
)
