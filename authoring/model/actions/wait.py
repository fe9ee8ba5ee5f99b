"""Let time pass."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("wait", "let"),
    says="Wait {what}.",
    what=Role("How long.", frozenset({Kind.VALUE}), dimensions=frozenset({Dimension.TIME})),
    effects=(),
    reach=Reach.NOWHERE,
)
