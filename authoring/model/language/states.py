"""The schema of states: what must be so, and what a job leaves behind."""

from __future__ import annotations

from authoring.model.language.terms import NAME_PATTERN, NAME_WORDING, JsonSchema

STATES = {
    "stopped": "stopped",
    "running": "running",
    "isolated": "isolated",
    "live": "live",
    "proved-dead": "proved dead",
    "supported": "held up",
    "chocked": "chocked",
    "free": "not held up",
    "raised": "raised",
    "lowered": "lowered",
    "open": "open",
    "closed": "closed",
    "removed": "off",
    "fitted": "on",
    "drained": "drained",
    "filled": "filled",
    "without-pressure": "without pressure",
}
"""The states that every item or fluid can be in, and how a reader is told; an item adds its positions."""


def states(meaning: str) -> JsonSchema:
    """Return the schema of a group that gives things their states."""
    return {
        "type": "object",
        "propertyNames": {"pattern": NAME_PATTERN, "x-wording": NAME_WORDING},
        "additionalProperties": {
            "type": "string",
            "pattern": NAME_PATTERN,
            "x-wording": "write a state such as stopped, a position of the item, or the name of a value",
            "description": "A state, a position of the item, or the name of the value it must lie in.",
        },
        "minProperties": 1,
        "x-wording": "this names at least one thing and its state",
        "description": meaning,
    }
