"""Where a procedure sends its reader to another procedure and back."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.model.action_kind import Kind
from authoring.model.mentions import Mention, of_action
from authoring.model.procedure import Procedure

_PROCEDURE = frozenset({Kind.PROCEDURE})


def calls(procedure: Procedure) -> Iterator[Mention]:
    """Yield the mentions of procedures that are carried out: by an action, or by what a checkpoint shows."""
    for _, step in procedure.steps():
        for action in step.actions:
            yield from (mention for mention in of_action(action) if mention.kinds == _PROCEDURE)
