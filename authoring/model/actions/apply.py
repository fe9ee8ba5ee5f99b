"""Put a consumable on something."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("apply", "smear", "coat", "wipe"),
    says="Apply {what}.",
    what=Role("The consumable.", frozenset({Kind.CONSUMABLE})),
    effects=(),
    reach=Reach.THING,
    reached=("to",),
    roles={
        "to": Role("What it goes on.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE}), required=True),
        "amount": Role(
            "How much.",
            frozenset({Kind.VALUE}),
            dimensions=frozenset({Dimension.VOLUME, Dimension.MASS, Dimension.LENGTH}),
        ),
    },
)
