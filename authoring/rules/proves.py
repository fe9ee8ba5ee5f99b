"""What each family of rules proves, in the words of a technician, for the booklet's page of what was checked."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from authoring.rules.rule import families


class Proves(Struct, frozen=True):
    """What a family looks at, and what holds where none of its rules finds anything."""

    subject: str
    holds: str


PROVES: Mapping[str, Proves] = {
    "reading": Proves("Files", "Every file can be read in one way only, and has the form of the language."),
    "references": Proves(
        "Names",
        "Every name stands for one thing of the right kind, nothing stated is idle, and each way leads somewhere.",
    ),
    "text": Proves(
        "Text and data",
        "A text names what its step touches, and no other thing, with a verb for what is done.",
    ),
    "language": Proves(
        "Wording",
        "Looked for, which is no proof: steps that are long, passive or vague, or that ask for several things.",
    ),
    "statements": Proves(
        "What only the author knows",
        "It is stated, or said to be none: conditions, persons, times, phases, reasons, changes.",
    ),
    "revisions": Proves(
        "Revisions",
        "They follow one another, and two persons who may wrote and approved the newest.",
    ),
    "vehicles": Proves(
        "Vehicles",
        "Each part choice gives every vehicle its part, and only one; no step touches what its vehicle lacks; nothing "
        "is for vehicles that cannot be.",
    ),
    "states": Proves(
        "States of things",
        "On every way nothing is worked on under its cover, taken off while it is held, or run, fed or filled while it "
        "stands open; each hold point is passed, and each step is reached.",
    ),
    "course": Proves(
        "Course of the work",
        "What comes off, is opened, shut off or held up is brought back, or its fate is told; what a step needs is not "
        "undone by a step above it; methods come to the same.",
    ),
    "checks": Proves(
        "Checks",
        "Each check says what follows either way; no way back is without end; each joint on which life depends has its "
        "hold point.",
    ),
    "parts": Proves(
        "Parts",
        "What is used once does not go back on; a look-alike, and what may sometimes be used again, is looked at.",
    ),
    "quantities": Proves(
        "Values and tightening",
        "Each value has its source, unit and window; stages rise; a wrench at hand can do the torque; where thread, "
        "class and friction are stated, the torque overloads neither bolt nor thread.",
    ),
    "positions": Proves(
        "Places of fasteners",
        "They are as many as the fasteners, no two are one, and it is said from where they are seen.",
    ),
    "measuring": Proves(
        "Measuring",
        "The gauge shows what is measured and tells look-alikes apart; a temperature that is needed is measured.",
    ),
    "materials": Proves(
        "Fluids and supplies",
        "What is poured can agree with what the machine holds; no fluid comes on another kind; waste has its place.",
    ),
    "heat": Proves(
        "Heat",
        "Waits are as long as cooling is worked out to take; a burn is warned of as one; heat is enough to join.",
    ),
    "safety": Proves(
        "Safety messages",
        "Each tells the danger, what it does and how to stay clear; a stated danger is warned of where it is met; what "
        "protects is listed at its step.",
    ),
    "policy": Proves(
        "Safety policy",
        "In each situation that the shop or a default names, the step has what is demanded.",
    ),
    "sides": Proves("Left and right", "Each side and hour is seen from somewhere, and twins name one another."),
    "figures": Proves("Figures", "Each picture is there and told in words, and its numbers are those of the text."),
    "printing": Proves(
        "Printing",
        "Every sign can be printed; no PDF is written in which a caution, torque or check is parted from its step.",
    ),
    "allowing": Proves("Warnings let through", "Each has its reason, and still lets something through."),
}
"""By the name of the family, in the order of the page."""


def proved() -> tuple[tuple[str, Proves], ...]:
    """Return each family and what it proves, in the order of the page; one without words of its own comes last."""
    rest = [name for name in families() if name not in PROVES]
    return (*PROVES.items(), *((name, Proves(name.capitalize(), "Its rules found nothing wrong.")) for name in rest))
