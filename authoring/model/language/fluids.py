"""The schema of fluids: oils, coolants and others in the machine."""

from __future__ import annotations

from authoring.model.language.terms import (
    group,
    name,
    named,
    names,
    quantity,
    specification,
    text,
    when,
)

_CIRCUIT = group(
    "A part that a thermostat keeps shut until the fluid is hot; until then it is missing from the level.",
    {
        "name": text("The name of that part, without an article, such as: cooler."),
        "opens": quantity("Where the thermostat opens, from the first to the last, such as 58 to 62 °C."),
        "source": name("Short name of the source that states it."),
        "at": text("Where in that source: page, table, paragraph."),
        "when": when(),
    },
    ("name", "opens"),
)

FLUIDS = named(
    "Oils, coolants and other fluids in the machine.",
    group(
        "One fluid.",
        {
            "name": text("The name, without an article."),
            "kind": text("What to pour, by kind and grade."),
            "in": name("The item that holds it."),
            "mixes-with": names("Other fluids of the machine that it may be mixed with."),
            "capacity": specification("How much the dry system holds."),
            "left-in": specification("How much stays in when it is drained."),
            "between-marks": specification("How much lies between the two marks of the dipstick or the glass."),
            "expansion": specification("The share of its volume by which it grows for each kelvin, such as 0.00075."),
            "density": specification("The density of a petroleum oil at 15 °C, instead of expansion: 870 kg/m³."),
            "circuit": _CIRCUIT,
            "disposal": text("Where it goes when drained."),
            "when": when(),
        },
        ("name", "kind"),
    ),
)
