"""Where a procedure sends its reader to another procedure: on the way and back, or before it can begin."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.model.action_kind import Kind
from authoring.model.library import Library
from authoring.model.mentions import Mention
from authoring.model.procedure import Procedure

_PROCEDURE = frozenset({Kind.PROCEDURE})


def calls(procedure: Procedure, library: Library) -> Iterator[Mention]:
    """Yield the mentions of procedures that are carried out: by an action, or by what is found or noticed."""
    return (mention for mention in _of_procedures(procedure, library) if mention.role not in {"by", "after"})


def waits_for(procedure: Procedure, library: Library) -> Iterator[Mention]:
    """Yield the mentions of procedures that bring about a condition, and so are done before this one."""
    return (mention for mention in _of_procedures(procedure, library) if mention.role == "by")


def _of_procedures(procedure: Procedure, library: Library) -> Iterator[Mention]:
    return (mention for mention in library.scope(procedure).mentions if mention.kinds == _PROCEDURE)
