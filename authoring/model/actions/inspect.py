"""Look at, feel or listen to something and decide."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("inspect", "look at", "look", "feel", "listen to", "check", "read"),
    says="Inspect {what}.",
    what=Role("What is judged.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE})),
    ways=("seen", "felt", "heard"),
)
