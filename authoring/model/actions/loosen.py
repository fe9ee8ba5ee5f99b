"""Slacken fasteners without taking them out."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("loosen", "slacken"),
    says="Loosen {what}.",
    what=Role("The fastener group.", frozenset({Kind.FASTENERS})),
    loosens=True,
)
