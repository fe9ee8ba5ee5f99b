"""The part of a schema that lists documents values come from."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, group, named, one_of, text


def sources() -> JsonSchema:
    """Return the schema of a `sources` group."""
    return named(
        "The documents that values come from, each under a short name.",
        group(
            "One document.",
            {
                "title": text("Title as it stands on the document."),
                "edition": text(
                    "Edition, issue or date; without it nobody can tell whether a value is still in force."
                ),
                "kind": one_of(
                    "What it is: the maker's data, a standard, the shop's own measurement, or common practice.",
                    "maker",
                    "standard",
                    "shop",
                    "common-practice",
                ),
            },
            ("title", "kind"),
        ),
    )
