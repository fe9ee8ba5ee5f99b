"""Throw something away that is never used again."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach

ACTION = ActionKind(
    words=("discard", "throw away", "scrap"),
    says="Discard {what}.",
    what=Role("What is thrown away.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART})),
    effects=(Effect("where", "discarded"),),
    reach=Reach.NOWHERE,
    discards=True,
)
