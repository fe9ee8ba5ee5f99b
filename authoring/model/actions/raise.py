"""Lift the machine or a part of it."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("raise", "lift"),
    says="Raise {what}.",
    what=Role("What goes up.", frozenset({Kind.ITEM})),
    effects=(Effect("height", "raised"),),
    reach=Reach.NOWHERE,
)
