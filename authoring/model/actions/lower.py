"""Let the machine or a part of it down."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("lower", "let down"),
    says="Lower {what}.",
    what=Role("What comes down.", frozenset({Kind.ITEM})),
    undoes=("raise", "support"),
)
