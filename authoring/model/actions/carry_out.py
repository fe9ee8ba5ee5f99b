"""Carry out another procedure of the library, then come back to the next step."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("carry out", "do"),
    says="Carry out {what}.",
    what=Role("The other procedure.", frozenset({Kind.PROCEDURE})),
    effects=(),
    reach=Reach.NOWHERE,
)
