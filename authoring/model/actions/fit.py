"""Put something on or in: an item that came off, a part from stock, or the part a choice leads to."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import CARRIED, Effect, Reach

ACTION = ActionKind(
    words=(
        "fit",
        "press on",
        "put on",
        "put back",
        "push on",
        "push in",
        "press in",
        "slide on",
        "screw in",
        "refit",
        "slide in",
        "put in",
        "put into",
        "drop in",
        "insert",
        "lay in",
    ),
    says="Fit {what}.",
    what=Role("What goes on.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})),
    effects=(Effect("where", "fitted"), Effect("where", "replaced", of="replaces"), CARRIED),
    reach=Reach.PLACE,
    roles={
        "on": Role("What it goes on or into.", frozenset({Kind.ITEM, Kind.PART, Kind.CHOICE})),
        "replaces": Role(
            "The old thing whose place it takes.",
            frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE}),
            silent=True,
        ),
    },
    counted=True,
    undoes=("remove", "support"),
    handles=True,
)
