"""Screw fasteners in by hand, a few turns, before any of them is tightened."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("start", "screw in", "turn in"),
    says="Start {what} by hand.",
    what=Role("The fastener group.", frozenset({Kind.FASTENERS})),
    handles=True,
)
