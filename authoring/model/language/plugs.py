"""The schema of what a plug, tap or cap has to do with fluids, and of what seals a thing."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, names

PLUGS: dict[str, JsonSchema] = {
    "drains": names("The fluids that run out while it is not in its place."),
    "fills": names("The fluids that are poured in through it, or whose level is seen there."),
    "seals-with": names("The parts of the stock, a ring or a gasket, that are renewed whenever it has come off."),
}
"""What items and fastener groups have alike."""
