"""Lay something aside that is fitted again."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach

ACTION = ActionKind(
    words=("keep", "lay", "put", "set aside", "lay aside", "store"),
    says="Keep {what}.",
    what=Role("What is kept.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART})),
    effects=(),
    reach=Reach.NOWHERE,
    roles={
        "in": Role("What it is kept in.", frozenset({Kind.TOOL})),
    },
    keeps=True,
)
