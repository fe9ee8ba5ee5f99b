"""Let air out of a system."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("bleed", "vent"),
    says="Bleed {what}.",
    what=Role("The fluid or the item that holds it.", frozenset({Kind.FLUID, Kind.ITEM})),
    effects=(Effect("air", "bled"),),
    reach=Reach.THING,
    reached=("at",),
    roles={
        "at": Role("Where the air comes out.", frozenset({Kind.ITEM, Kind.FASTENERS})),
    },
)
