"""Bring something fully home in its place."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("seat", "push home", "press home", "drive home", "press", "push"),
    says="Seat {what}.",
    what=Role("What is brought home.", frozenset({Kind.ITEM, Kind.PART, Kind.CHOICE})),
    roles={
        "in": Role("What it sits in.", frozenset({Kind.ITEM})),
    },
)
