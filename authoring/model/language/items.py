"""The schema of items: what can be taken off, fitted, opened, disconnected, run or looked at."""

from __future__ import annotations

from authoring.model.language.manner import side
from authoring.model.language.plugs import PLUGS
from authoring.model.language.reuse import REUSE
from authoring.model.language.terms import (
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
)

SURFACES = ("bare-metal", "coated-metal", "stone", "plastic", "wood")
"""What a hand meets, as the table of burn thresholds sorts it; stone is also ceramic and glass."""

_HOT = group(
    "How hot it gets, and what the hand meets: from this follows whether a touch burns.",
    {
        "value": quantity("The temperature that it reaches in use, such as at most 350 °C."),
        "source": name("Short name of the source that states it."),
        "at": text("Where in that source: page, table, paragraph."),
        "surface": one_of("What its surface is.", *SURFACES),
        "touch": quantity("How long a hand may rest on it, such as 1 min; a second when left out."),
    },
    ("value", "surface"),
)

_COOLED = group(
    "Instead of cooling: two readings from which the time of cooling is worked out.",
    {
        "from": quantity("The first reading, such as 180 °C."),
        "to": quantity("The second reading, such as 95 °C."),
        "in": quantity("The time between the two, such as 20 min."),
        "air": quantity("The temperature of the air meanwhile."),
        "source": name("Short name of the source that states them."),
        "at": text("Where in that source: page, table, paragraph."),
    },
    ("from", "to", "in", "air"),
)

FACTS = {
    "mass": specification("How heavy it is, such as 42 kg."),
    "pressure": specification("The pressure that it holds in use, such as at most 20 bar."),
    "voltage": specification("The direct voltage that it carries in use, such as 12 V."),
    "voltage-ac": specification("The alternating voltage that it carries in use, as its effective value."),
    "height": specification("How high above the floor it is worked on, such as 2.1 m."),
}
"""What is stated of a thing and makes it a danger; a policy has bounds of them."""

ITEMS = named(
    "What can be taken off, fitted, opened, disconnected, run or looked at.",
    group(
        "One item.",
        {
            "name": text("The name, without an article."),
            "place": text("Where it is, when that is not obvious."),
            "covers": names("What lies behind it, and cannot be reached while it is on."),
            "part-of": name("The larger item that it belongs to."),
            "side": side(),
            "twin": name("Its counterpart on the other side."),
            "positions": named("Where a lever, switch or tap can stand.", text("What this position is called.")),
            "release": listed("How it comes apart, in order, such as a connector with a catch.", text("one move")),
            "critical": text("Why the job must not fail here; printed wherever the item is touched."),
            "hazards": names("The kinds of hazard that it has, from the shop's register."),
            "material": text("What it is made of."),
            "hot": _HOT,
            **FACTS,
            "cooling": specification("The time in which its difference to the air falls to 37 %, such as 25 min."),
            "cooled": _COOLED,
            **PLUGS,
            **REUSE,
            "when": when(),
        },
        ("name",),
    ),
)
