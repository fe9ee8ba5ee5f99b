"""The schema of what may be used again, and of what is meant to be open while the engine runs."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, group, one_of, text

REUSE: dict[str, JsonSchema] = {
    "reuse": group(
        "Whether it may be used again.",
        {
            "is": one_of("always, never, or if: it depends on what say tells.", "always", "never", "if"),
            "say": text("On what it depends, or why not."),
        },
        ("is",),
    ),
    "open-while-running": text("Why it is meant to be open while the engine runs."),
}
"""What items and fastener groups have alike."""
