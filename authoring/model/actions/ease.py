"""Break something loose that sits fast, without taking it off yet."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("ease", "tap", "rock", "break loose", "work loose", "twist"),
    says="Ease {what}.",
    what=Role("What sits fast.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART})),
    effects=(),
    reach=Reach.PLACE,
)
