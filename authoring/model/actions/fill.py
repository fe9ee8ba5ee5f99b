"""Put a stated amount of a fluid in."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("fill", "pour", "pour in"),
    says="Fill {what}.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    effects=(Effect("fluid", "filled"),),
    reach=Reach.NOWHERE,
    pours=True,
    roles={
        "amount": Role("How much.", frozenset({Kind.VALUE}), required=True, dimensions=frozenset({Dimension.VOLUME})),
    },
)
