"""The schema of those who are told."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, one_of

HEARERS = ("customer", "lead", "next-technician", "driver")
"""Who is told of what was found or changed."""


def hearers() -> JsonSchema:
    """Return the schema of the list of those who are told."""
    return {
        "type": "array",
        "items": one_of("who", *HEARERS),
        "minItems": 1,
        "uniqueItems": True,
        "x-wording": f"this is a list of those who are told, none twice: {', '.join(HEARERS)}",
        "description": "Who must be told.",
    }
