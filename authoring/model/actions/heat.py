"""Bring something to a temperature before it is worked on."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.model.language.terms import one_of
from authoring.quantities.units import Dimension

_VALUE = frozenset({Kind.VALUE})
_LENGTH = frozenset({Dimension.LENGTH})

ACTION = ActionKind(
    words=("heat", "warm", "cool", "chill"),
    says="Heat {what}.",
    what=Role("What is warmed or cooled.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE})),
    effects=(),
    reach=Reach.THING,
    roles={
        "to": Role(
            "The temperature it must reach.",
            frozenset({Kind.VALUE}),
            required=True,
            dimensions=frozenset({Dimension.TEMPERATURE}),
        ),
        "with": Role("What warms or cools it.", frozenset({Kind.TOOL, Kind.CONSUMABLE})),
        "bore": Role(
            "The bore that must grow over a shaft: its size when cold.", _VALUE, dimensions=_LENGTH, silent=True
        ),
        "shaft": Role("The shaft that it goes over: its size.", _VALUE, dimensions=_LENGTH, silent=True),
        "clearance": Role("How much room is wanted between the two.", _VALUE, dimensions=_LENGTH, silent=True),
    },
    details={"metal": one_of("What the part with the bore is made of.", "steel", "aluminium", "brass", "copper")},
)
