"""Show that an isolated source of energy is dead."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("prove", "check", "test"),
    says="Prove {what} dead.",
    what=Role("What must be dead.", frozenset({Kind.ITEM})),
    effects=(),
    reach=Reach.NOWHERE,
    roles={
        "value": Role("What the instrument may show at most.", frozenset({Kind.VALUE})),
    },
    ways=("measured", "seen", "felt"),
)
