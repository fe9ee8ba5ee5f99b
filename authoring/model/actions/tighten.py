"""Bring a fastener group to the torque that the equipment states for it."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("tighten", "torque"),
    says="Tighten {what}.",
    what=Role("The fastener group.", frozenset({Kind.FASTENERS})),
    effects=(Effect("where", "tight"),),
    reach=Reach.PLACE,
    torque=True,
    undoes=("remove", "loosen"),
)
