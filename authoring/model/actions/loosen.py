"""Slacken fasteners without taking them out."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("loosen", "slacken"),
    says="Loosen {what}.",
    what=Role("The fastener group.", frozenset({Kind.FASTENERS})),
    effects=(Effect("where", "loose"),),
    reach=Reach.PLACE,
    loosens=True,
)
