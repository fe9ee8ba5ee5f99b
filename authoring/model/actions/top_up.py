"""Add a fluid until a level is reached."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("top up", "add"),
    says="Top up {what}.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    effects=(Effect("fluid", "filled"),),
    reach=Reach.NOWHERE,
    pours=True,
)
