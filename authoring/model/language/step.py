"""The schema of sections and steps, but for the actions, which bring their own part."""

from __future__ import annotations

from authoring.model.language.checkpoint import outcomes
from authoring.model.language.states import states
from authoring.model.language.terms import (
    JsonSchema,
    allow,
    group,
    listed,
    name,
    names,
    one_of,
    quantity,
    text,
    when,
    whole,
)

ACTION = "action"
STEP = "step"

PHASES = ("prepare", "remove", "work", "refit", "test", "close")
"""The parts of a job, in the order in which they follow one another (requirement A3)."""


def _repeat(what: str) -> JsonSchema:
    return group(
        f"{what} is done again and again: until when or how often, how often at most, and what then.",
        {
            "until": text("Until when."),
            "times": whole("How many times, where that is fixed.", 2),
            "at-most": whole("How many times at most.", 2),
            "else": text("What happens when it is not reached."),
        },
    ) | {"minProperties": 1, "x-wording": "this says until when, or how many times"}


def step() -> JsonSchema:
    """Return the schema of one step; its methods are steps again."""
    return group(
        "One step: an instruction and what it does to the machine.",
        {
            "step": text("The instruction; things are named in brackets, such as: Remove the [level-plug]."),
            "id": name("Short name, where something refers to the step."),
            "when": when(),
            "if-done": names("Only when one of these steps was done."),
            "unless-done": names("Only when none of these steps was done."),
            "optional": text("The step may be skipped: when it is worth doing."),
            "allow": allow(),
            "needs": states("What must be so, such as {engine: stopped}."),
            "persons": whole("How many people the step takes, where it is more than one."),
            "do": listed("The actions, in order.", {"$ref": f"#/$defs/{ACTION}"}),
            "either": listed(
                "Instead of do: methods that come to the same; exactly one of them is done.",
                {"$ref": f"#/$defs/{STEP}"},
            )
            | {
                "minItems": 2,
                "maxItems": 26,
                "x-wording": "there are two methods to pick from at least, and 26 at most",
            },
            "while": group(
                "While keeping this, do that.",
                {
                    "hold": names("What is kept as it is."),
                    "how": text("How it is kept, such as: pulled up against its spring."),
                    "by": one_of("By whom.", "other-hand", "helper"),
                },
                ("hold", "by"),
            ),
            "near": names("Items that the hands come near to, such as a hot pipe beside the work."),
            "leave": names("Things among the others that are not to be touched."),
            "leaves": states("A state that the step brings about and its actions do not say."),
            "repeat": _repeat("The step"),
            "deadline": group(
                "It must be finished in a certain time.",
                {
                    "from": name("The id of the step at which the time starts."),
                    "within": name("How long: a value of time."),
                    "else": text("What to do when it is too late."),
                },
                ("from", "within", "else"),
            ),
            "with": names("Tools and consumables the step uses."),
            "safety": names("Safety messages that must stand before the step."),
            "figures": names("Figures that belong to the step."),
            "noticed": outcomes("What somebody may notice here unasked, and what follows."),
            "why": text("The reason, where knowing it makes the work better."),
            "tip": text("An easier way or a piece of advice; no safety message."),
        },
    )


def section() -> JsonSchema:
    """Return the schema of one section."""
    return group(
        "A run of steps under a heading.",
        {
            "id": name("Short name, where something refers to the section."),
            "title": text("The heading."),
            "phase": one_of("Which part of the job it is; sections follow one another in this order.", *PHASES),
            "when": when(),
            "optional": text("The section may be skipped: when it is worth doing."),
            "allow": allow(),
            "time": quantity("How long it takes, such as 15 min."),
            "intro": text("What the section is about."),
            "needs": states("What must be so for all its steps."),
            "bench": name("The sub-assembly that is worked on at the bench."),
            "order": one_of("any when the steps may be done in any order.", "as-written", "any"),
            "repeat": _repeat("The section"),
            "safety": names("Safety messages that hold for every step of the section."),
            "steps": listed("The steps, in order.", {"$ref": f"#/$defs/{STEP}"}),
            "noticed": outcomes("What somebody may notice in the section unasked, and what follows."),
            "safe-to-stop": text("It is safe to stop after this section: how the machine is left until then."),
        },
        ("title", "steps"),
    )
