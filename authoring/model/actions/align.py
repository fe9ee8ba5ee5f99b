"""Bring something into its position."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("align", "line up", "turn", "set", "push"),
    says="Align {what}.",
    what=Role("What is brought into position.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})),
    effects=(),
    reach=Reach.PLACE,
    roles={
        "to": Role("What it is lined up with.", frozenset({Kind.ITEM, Kind.PART})),
        "depth": Role("How far.", frozenset({Kind.VALUE}), dimensions=frozenset({Dimension.LENGTH, Dimension.ANGLE})),
    },
)
