"""Screw fasteners in by hand, a few turns, before any of them is tightened."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("start", "screw in", "turn in"),
    says="Start {what} by hand.",
    what=Role("The fastener group.", frozenset({Kind.FASTENERS})),
    effects=(Effect("where", "started"),),
    reach=Reach.PLACE,
    handles=True,
)
