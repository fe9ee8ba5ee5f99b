"""All actions of the language, found by their place: one file each in `actions/`."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

from msgspec.structs import replace

from authoring.model import actions
from authoring.model.action_kind import ActionKind


@cache
def action_kinds() -> dict[str, ActionKind]:
    """Return every action by its name, which is its file's name with hyphens."""
    found: dict[str, ActionKind] = {}
    for module in sorted(pkgutil.iter_modules(actions.__path__), key=lambda one: one.name):
        name = module.name.replace("_", "-")
        action: ActionKind = importlib.import_module(f"{actions.__name__}.{module.name}").ACTION
        found[name] = replace(action, name=name)
    return found
