"""Bring a lever, switch or tap to one of its positions."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Effect, Reach
from authoring.model.language.terms import name

ACTION = ActionKind(
    words=("set", "put", "move", "turn", "push", "pull", "shift", "switch", "select"),
    says="Set {what}.",
    what=Role("The lever, switch or tap.", frozenset({Kind.ITEM})),
    effects=(Effect("position", says="position"),),
    reach=Reach.THING,
    details={"position": name("Short name of one of its positions.")},
    needed=("position",),
)
