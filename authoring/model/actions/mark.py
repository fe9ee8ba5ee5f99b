"""Make a mark that shows how something stood."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("mark", "scribe"),
    says="Mark {what}.",
    what=Role("What is marked.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART})),
    effects=(),
    reach=Reach.THING,
)
