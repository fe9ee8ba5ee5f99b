"""Tell somebody what was found or changed."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.model.language.hearers import HEARERS
from authoring.model.language.terms import one_of

ACTION = ActionKind(
    words=("tell", "show", "write down", "report", "inform"),
    says="Tell of {what}.",
    what=Role(
        "What is told of.",
        frozenset(
            {Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE, Kind.OPTION, Kind.MODIFICATION, Kind.VALUE}
        ),
    ),
    effects=(),
    reach=Reach.NOWHERE,
    details={"who": one_of("Who is told.", *HEARERS)},
    needed=("who",),
)
