"""Add a fluid until a level is reached."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("top up", "add"),
    says="Top up {what}.",
    what=Role("The fluid.", frozenset({Kind.FLUID})),
    pours=True,
)
