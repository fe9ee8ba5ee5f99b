"""Count something and compare it with the number it must be."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("count", "check"),
    says="Count {what}.",
    what=Role("What is counted.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.TOOL})),
    effects=(),
    reach=Reach.NOWHERE,
    ways=("counted",),
)
