"""The schema of the stock file: parts, tools and consumables the shop knows."""

from __future__ import annotations

from authoring.model.language.terms import allow, group, named, text, truth

SCHEMA = group(
    "The stock file: one in each library.",
    {
        "allow": allow(),
        "stock": text("What this list is called, such as: Stores."),
        "parts": named(
            "What is fitted and stays on the machine.",
            group(
                "One part.",
                {
                    "name": text("The name as a label or a technician says it, without an article."),
                    "number": text("The number on the bag or the part."),
                    "one-time": truth("true when it is never used twice."),
                    "place": text("Where it lies, when that is not obvious."),
                },
                ("name", "number"),
            ),
        ),
        "tools": named(
            "What is used and put back.",
            group(
                "One tool.",
                {
                    "name": text("The name, with its size, such as: 19 mm socket."),
                    "place": text("Where it hangs, when that is not obvious."),
                },
                ("name",),
            ),
        ),
        "consumables": named(
            "What is used up.",
            group(
                "One consumable.",
                {
                    "name": text("The name, without an article."),
                    "limits": text("How much is enough, and what it must not touch."),
                    "disposal": text("Where the rest and the rags go."),
                },
                ("name",),
            ),
        ),
    },
    ("stock",),
)
