"""Bring something fully home in its place."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("seat", "push home", "press home", "drive home", "press", "push"),
    says="Seat {what}.",
    what=Role("What is brought home.", frozenset({Kind.ITEM, Kind.PART, Kind.CHOICE})),
    effects=(Effect("where", "fitted"),),
    reach=Reach.PLACE,
    roles={
        "in": Role("What it sits in.", frozenset({Kind.ITEM})),
    },
)
