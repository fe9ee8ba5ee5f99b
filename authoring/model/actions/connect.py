"""Join a connector, hose or cable."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("connect", "plug in", "join"),
    says="Connect {what}.",
    what=Role("What is joined.", frozenset({Kind.ITEM})),
    undoes=("disconnect", "support"),
    handles=True,
)
