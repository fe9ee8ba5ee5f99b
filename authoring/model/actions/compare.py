"""Lay things side by side and judge the difference."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("compare", "lay", "check"),
    says="Compare {what}.",
    what=Role("What is compared.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})),
    effects=(),
    reach=Reach.THING,
    roles={
        "with": Role("What it is compared with.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})),
    },
    ways=("seen", "measured"),
)
