"""The part of the shop's schema that holds its safety policy: in which situation what must be so."""

from __future__ import annotations

from authoring.model.language.terms import (
    JsonSchema,
    group,
    listed,
    name,
    named,
    names,
    one_of,
    quantity,
    text,
    truth,
    whole,
)

ACT = "act"
"""The name under which a schema shares `act`."""


def act(actions: tuple[str, ...]) -> JsonSchema:
    """Return the schema of one act: near, touch, or the name of an action."""
    return one_of("near, touch, or one action of the language.", "near", "touch", *actions)


POLICY = named(
    "The shop's safety policy: in which situation which message, protection, hold point and hands are demanded.",
    group(
        "One demand. Under the name of a default it changes that default.",
        {
            "hazard": name("The kind of hazard: of the things that are meant, and of the messages."),
            "acts": listed(
                "What is done there: near (named under near), touch (done to it, with it or on it), or actions; "
                "near and touch when left out.",
                {"$ref": f"#/$defs/{ACT}"},
            ),
            "only-while": one_of("Only while something runs, or the thing is up and not held.", "running", "raised"),
            "hotter-than": quantity("Only things that get hotter, such as 60 °C."),
            "heavier-than": quantity("Only things that are heavier, such as 25 kg."),
            "above-pressure": quantity("Only things that hold a higher pressure, such as 0.5 bar."),
            "above-voltage": quantity("Only things with a higher direct voltage, such as 60 V."),
            "above-voltage-ac": quantity("Only things with a higher alternating voltage, such as 30 V."),
            "higher-than": quantity("Only things that are worked on higher above the floor, such as 2 m."),
            "severity": one_of("The least severity that the message states.", "death", "serious", "moderate", "minor"),
            "likelihood": one_of("The least likelihood that it states.", "will", "could"),
            "message": name("A message of the shop that is placed at the step where none of the kind is in force."),
            "wear": names("Tools or consumables that must be among those of the step."),
            "hold": truth("Whether a hold point of the same step or section comes before it."),
            "persons": whole("How many persons are there at least."),
            "loosened": text("Why less is asked than the default of this name asks; printed in the booklet."),
            "why": text("Why it is asked; told with each finding, and printed."),
        },
        ("why",),
    ),
)
