"""The schema of what a plug, tap or cap has to do with fluids."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, names

PLUGS: dict[str, JsonSchema] = {
    "drains": names("The fluids that run out while it is not in its place."),
    "fills": names("The fluids that are poured in through it, or whose level is seen there."),
}
"""What items and fastener groups have alike."""
