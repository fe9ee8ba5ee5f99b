"""Make something clean."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("clean", "wipe", "wash", "brush"),
    says="Clean {what}.",
    what=Role("What is cleaned.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART})),
    effects=(),
    reach=Reach.THING,
)
