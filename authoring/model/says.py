"""The text of a step that has none, made from its actions."""

from __future__ import annotations

from collections.abc import Sequence

from authoring.diagnostics.words import joined
from authoring.model.procedure import Action


def instruction(actions: Sequence[Action]) -> str:
    """Return a sentence for each action, in order, with every thing named in brackets."""
    return " ".join(action.kind.says.replace("{what}", _all(action.what)) for action in actions)


def _all(names: tuple[str, ...]) -> str:
    called = [f"[{name}]" if name[0].isupper() else f"the [{name}]" for name in names]
    return joined(called)
