"""Let an engine or mechanism run."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach
from authoring.quantities.units import Dimension

ACTION = ActionKind(
    words=("run", "start", "let", "drive"),
    says="Run {what}.",
    what=Role("What runs.", frozenset({Kind.ITEM})),
    effects=(Effect("motion", "running"),),
    reach=Reach.NOWHERE,
    roles={
        "at": Role(
            "How fast it turns.",
            frozenset({Kind.VALUE}),
            dimensions=frozenset({Dimension.ROTATION}),
        ),
        "until": Role(
            "When it has run enough.",
            frozenset({Kind.VALUE}),
            dimensions=frozenset({Dimension.TIME, Dimension.TEMPERATURE}),
        ),
    },
    runs=True,
)
