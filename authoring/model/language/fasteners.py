"""The schema of fastener groups: bolts, nuts or plugs tightened alike."""

from __future__ import annotations

from authoring.model.language.manner import CLOCK, side
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
    whole,
)

_POSITIONS = group(
    "Where the fasteners stand: evenly on a circle, or each at a place; the numbers of order count them.",
    {
        "circle": quantity("The diameter of the circle on which they stand evenly, such as 120 mm."),
        "first": CLOCK
        | {"description": "Where number 1 stands on the circle; 12 when left out. Clockwise from there."},
        "places": listed(
            "Instead of circle: each place as [to the right, up], in the order of the numbers.",
            {
                "type": "array",
                "items": {"type": "number", "minimum": -10_000, "maximum": 10_000},
                "minItems": 2,
                "maxItems": 2,
                "x-wording": "a place is two numbers, such as [40, -25]",
                "description": "one place",
            },
        ),
        "in": one_of("The unit of the places.", "mm", "in"),
        "seen-from": text("From where the pattern is seen, and standing how, such as: behind, standing in the pit."),
    },
)

_TAPPED = group(
    "The tapped hole that it goes into, where that is softer than the bolt.",
    {
        "material": text("What it is made of."),
        "engaged": quantity("The length of whole threads that are engaged, such as 15 mm."),
        "shear-strength": quantity("The shear strength of the material, such as 140 MPa."),
        "source": name("Short name of the source that states both."),
        "at": text("Where in that source: page, table, paragraph."),
    },
    ("material", "engaged", "shear-strength"),
)

FASTENERS = named(
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
            "positions": _POSITIONS,
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
            "nut-factor": specification("Instead of friction: the factor K in T = K F d for that state, such as 0.20."),
            "grip": specification("The length that is clamped, between the head and the thread that pulls."),
            "tapped": _TAPPED,
            "turned-with": names("The sockets, keys or spanners of the stock that turn it: any one of them fits."),
            "side": side(),
            "twin": name("Its counterpart on the other side."),
            **PLUGS,
            **REUSE,
            "when": when(),
        },
        ("name", "count", "thread"),
    ),
)
