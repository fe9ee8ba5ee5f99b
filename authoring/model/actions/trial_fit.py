"""Put together for a look, to be taken apart again: the closing count does not take it as fitted."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

_FITTED = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})

ACTION = ActionKind(
    words=("trial-fit", "try", "put together", "fit", "push on", "put on"),
    says="Trial-fit {what}.",
    what=Role("What is put together for a look.", _FITTED),
    effects=(Effect("where", "tried"),),
    reach=Reach.PLACE,
    roles={
        "on": Role("What it goes on or into.", frozenset({Kind.ITEM})),
        "without": Role("What is left out this time, such as the seal.", _FITTED),
    },
)
