"""Put a fluid in until it stands at a level; the amount is only expected."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach
from authoring.quantities.units import Dimension

_VALUE = frozenset({Kind.VALUE})

ACTION = ActionKind(
    words=("fill", "add", "pour", "pour in", "top up"),
    says="Fill {what} to its level.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    effects=(Effect("fluid", "filled"),),
    reach=Reach.THING,
    reached=("at",),
    pours=True,
    roles={
        "at": Role("Where the level is seen.", frozenset({Kind.ITEM, Kind.FASTENERS}), required=True),
        "window": Role(
            "The temperature at which the level counts.",
            _VALUE,
            dimensions=frozenset({Dimension.TEMPERATURE}),
            silent=True,
        ),
        "level": Role("Where the level must lie.", _VALUE, dimensions=frozenset({Dimension.LENGTH}), silent=True),
        "expected": Role(
            "How much it is expected to take in all since it was drained, first fills and all.",
            _VALUE,
            dimensions=frozenset({Dimension.VOLUME}),
            silent=True,
        ),
    },
)
