"""Ask somebody to decide an option."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role
from authoring.model.effects import Reach
from authoring.model.language.hearers import HEARERS
from authoring.model.language.terms import one_of

ACTION = ActionKind(
    words=("ask", "agree", "settle"),
    says="Ask about {what}.",
    what=Role("The option that is decided.", frozenset({Kind.OPTION})),
    effects=(),
    reach=Reach.NOWHERE,
    details={"who": one_of("Who is asked.", *HEARERS)},
    needed=("who",),
)
