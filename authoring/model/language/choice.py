"""The schema of a part choice."""

from __future__ import annotations

from authoring.model.language.terms import (
    JsonSchema,
    group,
    listed,
    name,
    named,
    names,
    specification,
    text,
    truth,
    when,
)


def choice() -> JsonSchema:
    """Return the schema of one part choice."""
    return group(
        "A part choice: which of several look-alike parts is the right one.",
        {
            "name": text("What the part is called, whichever it is, without an article."),
            "question": text("What decides, such as: Which brake does the machine have?"),
            "if-wrong": text("What the wrong one does, where it fits as well."),
            "no-matter": text("What differs between the parts and decides nothing."),
            "dimensions": named(
                "What is measured, where there is more than one size.",
                group(
                    "One dimension.",
                    {
                        "name": text("The name, without an article, such as: overall width."),
                        "decides": truth("false where it is measured by habit and decides nothing."),
                    },
                    ("name",),
                ),
            ),
            "parts": listed(
                "The parts to choose from.",
                group(
                    "One part that may be the right one.",
                    {
                        "part": name("Short name of the part in stock."),
                        "equal": names("Other parts in stock that do as well: either is right."),
                        "when": when(),
                        "size": specification("The size that tells it, such as 9.0 ± 0.3 mm, with its source."),
                        "sizes": named(
                            "Its size in each of the dimensions.", specification("One size, with its source.")
                        ),
                        "tell": text("How to tell it from the others."),
                    },
                    ("part", "tell"),
                ),
            ),
        },
        ("name", "question", "parts"),
    )
