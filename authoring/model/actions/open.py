"""Open something that stays on the machine."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("open", "unlatch", "swing open"),
    says="Open {what}.",
    what=Role("What is opened.", frozenset({Kind.ITEM})),
    parts_off=True,
)
