"""Take something off or out; it is kept unless it is discarded."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=(
        "remove",
        "take off",
        "take out",
        "unscrew",
        "pull off",
        "pull out",
        "lift off",
        "lift out",
        "press out",
        "drive out",
        "knock out",
    ),
    says="Remove {what}.",
    what=Role("What comes off.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART})),
    effects=(Effect("where", "removed"),),
    reach=Reach.PLACE,
    parts_off=True,
    loosens=True,
    handles=True,
)
