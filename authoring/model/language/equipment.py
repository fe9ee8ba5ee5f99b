"""The schema of an equipment file: what is worked on, and where each value comes from."""

from __future__ import annotations

from authoring.model.language.sources import sources
from authoring.model.language.terms import (
    JsonSchema,
    allow,
    group,
    listed,
    name,
    named,
    names,
    one_of,
    quantity,
    specification,
    text,
    when,
    whole,
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
)


def values() -> JsonSchema:
    """Return the schema of a `values` group: quantities with a name and a source."""
    return named(
        "Quantities that steps refer to, each stated once.",
        group(
            "One value.",
            {
                "name": text("What it is, without an article, such as: oil temperature for the level check."),
                "of": one_of("Its dimension; needed for a difference of temperature.", *DIMENSIONS),
                "value": quantity("The quantity, such as 45 to 55 °C."),
                "source": name("Short name of the source that states it."),
                "at": text("Where in that source: page, table, paragraph."),
            },
            ("name", "value"),
        ),
    )


_FEATURES = named(
    "In what the vehicles differ.",
    group(
        "One feature.",
        {
            "name": text("The name, without an article, such as: parking brake."),
            "tell": text("How to tell at the vehicle which value it has."),
            "values": named("The values it can have.", text("What this value is called, such as: disc brake.")),
        },
        ("name", "tell", "values"),
    ),
)

_ITEMS = named(
    "What can be taken off, fitted, opened, disconnected, run or looked at.",
    group(
        "One item.",
        {
            "name": text("The name, without an article."),
            "place": text("Where it is, when that is not obvious."),
            "covers": names(
                "What lies behind it and is named in the closing count; that the steps respect it is not checked yet."
            ),
            "when": when(),
        },
        ("name",),
    ),
)

_FASTENERS = named(
    "Bolts, nuts or plugs tightened alike.",
    group(
        "One fastener group.",
        {
            "name": text("The name, without an article; plural when there are several."),
            "count": whole("How many."),
            "thread": text("Thread, such as M10 x 1.5."),
            "class": text("Property class, such as 8.8."),
            "length": quantity("Length under the head, with its unit, where it tells two groups apart."),
            "on": name("The item it holds."),
            "torque": specification("The torque it is tightened to."),
            "when": when(),
        },
        ("name", "count", "thread"),
    ),
)

_FLUIDS = named(
    "Oils, coolants and other fluids in the machine.",
    group(
        "One fluid.",
        {
            "name": text("The name, without an article."),
            "kind": text("What to pour, by kind and grade."),
            "capacity": specification("How much the dry system holds."),
            "disposal": text("Where it goes when drained."),
            "when": when(),
        },
        ("name", "kind"),
    ),
)

SCHEMA = group(
    "An equipment file: one kind of machine.",
    {
        "allow": allow(),
        "equipment": name("The short name procedures call it by."),
        "name": text("The name as people say it."),
        "features": _FEATURES,
        "never": listed("Combinations of features that do not exist.", when()),
        "sources": sources(),
        "items": _ITEMS,
        "fasteners": _FASTENERS,
        "fluids": _FLUIDS,
        "values": values(),
    },
    ("equipment", "name", "items"),
)
