"""The schema of stated values: quantities with a name and a source."""

from __future__ import annotations

from authoring.model.language.terms import (
    JsonSchema,
    group,
    listed,
    name,
    named,
    one_of,
    quantity,
    text,
    when,
)

DIMENSIONS = (
    "torque",
    "length",
    "volume",
    "temperature",
    "temperature-difference",
    "pressure",
    "mass",
    "time",
    "angle",
    "count",
    "force",
    "ratio",
    "speed-of-rotation",
    "flow",
    "voltage",
    "current",
    "resistance",
    "density",
)


def values() -> JsonSchema:
    """Return the schema of a `values` group: quantities with a name and a source."""
    return named(
        "Quantities that steps refer to, each stated once.",
        group(
            "One value.",
            {
                "name": text("What it is, without an article, such as: oil temperature for the level check."),
                "windows": listed(
                    "Instead of value: several windows, each of which will do; the first that holds is the best one.",
                    group(
                        "One window.",
                        {
                            "value": quantity("The quantity, such as 45 to 55 °C."),
                            "source": name("Short name of the source that states it."),
                            "at": text("Where in that source: page, table, paragraph."),
                            "when": when(),
                            "why": text("Why it holds, or what speaks for it."),
                            "otherwise": text("Why it does not hold for the other vehicles."),
                        },
                        ("value",),
                    ),
                ),
                "of": one_of("Its dimension; needed for a difference of temperature.", *DIMENSIONS),
                "value": quantity("The quantity, such as 45 to 55 °C."),
                "source": name("Short name of the source that states it."),
                "at": text("Where in that source: page, table, paragraph."),
            },
            ("name",),
        ),
    )
