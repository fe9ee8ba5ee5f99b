"""Close something that was opened."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("close", "latch", "swing shut", "shut"),
    says="Close {what}.",
    what=Role("What is closed.", frozenset({Kind.ITEM})),
    undoes=("open",),
)
