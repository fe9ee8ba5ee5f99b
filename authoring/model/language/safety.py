"""The part of a schema that holds one safety message.

The author states harm, severity and likelihood; the signal word is derived (requirement S1).
"""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, group, name, one_of, text, when

SIGNS = (
    "general",
    "hot-surface",
    "crushing",
    "slipping",
    "electricity",
    "raised-load",
    "moving-parts",
    "pressure",
    "eye-protection",
    "gloves",
)


def message() -> JsonSchema:
    """Return the schema of one safety message."""
    return group(
        "A safety message. State what is harmed and how badly; the signal word is worked out.",
        {
            "harm": one_of("What comes to harm.", "person", "equipment", "environment"),
            "severity": one_of(
                "How bad it gets: death, serious (lasting or hospital), moderate, minor.",
                "death",
                "serious",
                "moderate",
                "minor",
            ),
            "likelihood": one_of("will: it happens unless avoided; could: it may happen.", "will", "could"),
            "hazard": text("What threatens, such as: The exhaust pipe is hot."),
            "consequence": text("What it does, such as: It burns skin at a touch."),
            "avoidance": text(
                "How to stay clear of it: wear, keep away, do not. Work on the machine is a step instead."
            ),
            "sign": one_of("The drawing beside the word.", *SIGNS),
            "of": name("The kind of hazard, from the shop's register."),
            "when": when(),
        },
        ("harm", "severity", "likelihood"),
    )
