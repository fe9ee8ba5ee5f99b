"""All actions of the language, found by their place: one file each in `actions/`."""

from __future__ import annotations

import importlib
from functools import cache

from msgspec.structs import replace

from authoring.model import actions
from authoring.model.action_kind import ActionKind
from authoring.model.by_place import modules_in


@cache
def action_kinds() -> dict[str, ActionKind]:
    """Return every action by its name, which is its file's name with hyphens."""
    found: dict[str, ActionKind] = {}
    for module in modules_in(actions):
        name = module.replace("_", "-")
        action: ActionKind = importlib.import_module(f"{actions.__name__}.{module}").ACTION
        found[name] = replace(action, name=name)
    return found
