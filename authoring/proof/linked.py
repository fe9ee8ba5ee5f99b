"""What an action on one thing changes about another, or about it beyond what the action declares of itself."""

from __future__ import annotations

from msgspec import Struct

from authoring.model.ends import Side
from authoring.model.procedure import Action


class Linked(Struct, frozen=True):
    """Each of some actions on `named`, and a statement that it is `becomes`, leaves a side so.

    The side is one of another thing, or one that no action declares and only the question at hand follows.
    `role` is the role in which the action names the thing.
    """

    verbs: frozenset[str]
    named: str
    side: Side
    becomes: str
    role: str = "what"

    def done_by(self, action: Action) -> bool:
        """Tell whether an action does it."""
        if action.kind.name not in self.verbs:
            return False
        return self.named in action.what if self.role == "what" else action.roles.get(self.role) == self.named
