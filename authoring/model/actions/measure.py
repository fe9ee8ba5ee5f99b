"""Measure something and compare it with its window; a part choice told apart by size brings its own."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.model.language.terms import whole

ACTION = ActionKind(
    words=("measure", "check", "read"),
    says="Measure {what}.",
    what=Role("What is measured.", frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE})),
    effects=(),
    reach=Reach.THING,
    roles={
        "value": Role("The window it must lie in; left out for a part choice.", frozenset({Kind.VALUE})),
    },
    details={"places": whole("At how many places each thing is measured; every reading has its own line.", 2)},
    ways=("measured",),
)
