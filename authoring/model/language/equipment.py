"""The schema of an equipment file: what is worked on, and where each value comes from."""

from __future__ import annotations

from authoring.model.language.manner import side
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
    "force",
    "ratio",
    "speed-of-rotation",
    "flow",
    "voltage",
    "current",
    "resistance",
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

_ANY: dict[str, JsonSchema] = {
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
            "part-of": name("The larger item that it belongs to."),
            "side": side(),
            "twin": name("Its counterpart on the other side."),
            "positions": named("Where a lever, switch or tap can stand.", text("What this position is called.")),
            "release": listed("How it comes apart, in order, such as a connector with a catch.", text("one move")),
            "critical": text("Why the job must not fail here; printed wherever the item is touched."),
            "hazards": names("The kinds of hazard that it has, from the shop's register."),
            "material": text("What it is made of."),
            "cooling": specification("The time in which its difference to the air falls to 37 %, such as 25 min."),
            **_ANY,
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
            "stages": listed("The stages, in order, such as [20 N·m, 45 N·m, 90 °].", quantity("a stage")),
            "order": listed("The order of tightening: the number of each fastener.", whole("the number of a fastener")),
            "tightened": text("How it is tightened, where no torque is published."),
            "among": name("The item among whose fasteners it sits, where that is not the one it holds."),
            "untouched": text("Why it is never loosened in the workshop."),
            "joint": one_of(
                "What a failure puts at risk: A life, B the function, C comfort alone.",
                "A",
                "B",
                "C",
            ),
            "threads": one_of(
                "The state of the threads when it is tightened.", "dry", "oiled", "greased", "thread-lock"
            ),
            "friction": specification("The coefficient of friction for that state, such as 0.12 to 0.16."),
            "side": side(),
            "twin": name("Its counterpart on the other side."),
            **_ANY,
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
            "expansion": specification("The share of its volume by which it grows for each kelvin, such as 0.00075."),
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
        "viewpoint": text("From where left and right are meant, such as: seen from the driver's seat."),
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
