"""Look at, feel or listen to something and decide."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("inspect", "look at", "look", "feel", "listen to", "check", "read"),
    says="Inspect {what}.",
    what=Role("What is judged.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE})),
    effects=(),
    reach=Reach.THING,
    reached=("at", "what"),
    roles={
        "at": Role("Where it is seen or felt.", frozenset({Kind.ITEM, Kind.FASTENERS})),
        "against": Role("The picture it is compared with.", frozenset({Kind.FIGURE}), silent=True),
    },
    ways=("seen", "felt", "heard"),
)
