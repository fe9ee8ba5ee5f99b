"""Bring something to a temperature before it is worked on."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("heat", "warm", "cool", "chill"),
    says="Heat {what}.",
    what=Role("What is warmed or cooled.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE})),
    roles={
        "to": Role(
            "The temperature it must reach.",
            frozenset({Kind.VALUE}),
            required=True,
            dimensions=frozenset({Dimension.TEMPERATURE}),
        ),
        "with": Role("What warms or cools it.", frozenset({Kind.TOOL, Kind.CONSUMABLE})),
    },
)
