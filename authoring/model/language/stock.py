"""The schema of the stock file: parts, tools and consumables the shop knows."""

from __future__ import annotations

from authoring.model.language.figure import drawing
from authoring.model.language.terms import allow, group, named, quantity, specification, text, truth

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
                    "critical": text("Why the job must not fail here; printed wherever the part is touched."),
                    "material": text("What it is made of."),
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
                    "range": specification("What it can measure or tighten, such as 10 to 60 N·m."),
                    "resolution": quantity("The smallest step that it shows, such as 0.5 N·m."),
                    "accuracy": specification("How far it may be off: 4 %, or an amount such as 0.03 mm."),
                    "by-eye": truth("true when both ends of a length are read by eye, as on a rule."),
                    "length": quantity("Of a torque wrench: from the middle of its square to the middle of its grip."),
                    "adapter": group(
                        "What it adds to a wrench.",
                        {
                            "length": quantity("How far it moves the bolt from the square of the wrench."),
                            "angle": quantity("The angle at which it sits to the wrench; 0 ° when left out."),
                        },
                        ("length",),
                    ),
                    "made": text("By whom and after what it was made, when the shop made it."),
                    "drawing": drawing("The drawing of a tool that the shop made."),
                    "without": text("How to do without it."),
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
                    "take": text("How much of it one job takes, such as: two rags."),
                    "limits": text("How much is enough, and what it must not touch."),
                    "disposal": text("Where the rest and the rags go."),
                },
                ("name",),
            ),
        ),
    },
    ("stock",),
)
