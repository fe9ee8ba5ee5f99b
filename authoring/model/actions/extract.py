"""Draw a fluid out from above or by a pump."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("extract", "draw out", "pump out", "suck out"),
    says="Extract {what}.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    effects=(Effect("fluid", "drained", unless="amount"),),
    reach=Reach.NOWHERE,
    roles={
        "into": Role("What catches it.", frozenset({Kind.TOOL})),
        "amount": Role("How much.", frozenset({Kind.VALUE}), dimensions=frozenset({Dimension.VOLUME})),
    },
    lets_out=True,
)
