"""The schema of what any action may say of its manner: how it is done, which way round, and what to keep clear of."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, group, listed, name, one_of, text, texts

SIDES = ("left", "right", "front", "rear", "top", "bottom", "inside", "outside")

WAYS = ("seen", "felt", "heard")


def side() -> JsonSchema:
    """Return the schema of a side of the machine."""
    return one_of("On which side.", *SIDES)


CLOCK: JsonSchema = {
    "type": "string",
    "pattern": r"^(1[0-2]|[1-9])(:(00|15|30|45))?$",
    "x-wording": 'a clock position is an hour from 1 to 12, in quotes, such as "7" or "7:30"',
}
"""A position on the face of a clock, without its meaning."""

_ORIENTATION = group(
    "Which way round it goes.",
    {
        "first": text("Which end goes first."),
        "mark": text("Which face or mark it is about, such as: the lip."),
        "towards": name("The thing that the face or mark points at."),
        "clock": CLOCK | {"description": "Where the mark stands, as on the face of a clock."},
        "side": side(),
        "seen-from": text("From where that is seen, and standing how."),
    },
)

_ENGAGES = listed(
    "Where it engages another part.",
    group(
        "One place of this part and the place of the other that it goes into.",
        {
            "part": text("What on this part, such as: the two pins."),
            "with": name("The other thing."),
            "at": text("Which place of the other thing, such as: the slots in its arms."),
        },
        ("part", "with"),
    ),
)

_CLEAR_OF = listed(
    "What it must not touch.",
    group(
        "One thing to stay clear of.",
        {"of": name("The other thing."), "by": name("The least distance: a value.")},
        ("of",),
    ),
)

_CONFIRMED = group("How the hand knows that it is done.", {way: text(f"What is {way}.") for way in WAYS})

MANNER: dict[str, JsonSchema] = {
    "how": texts("The manner, such as: evenly, a little on each side; by hand; no tool on this face."),
    "because": text("Why it is done to this part."),
    "confirmed": _CONFIRMED | {"minProperties": 1, "x-wording": "this says what is seen, felt or heard"},
    "orientation": _ORIENTATION | {"minProperties": 1, "x-wording": "this says which end, face or mark goes where"},
    "engages": _ENGAGES,
    "clear-of": _CLEAR_OF,
    "force": name("The most that may be applied: a value of force, torque or pressure."),
}
"""What an action in its long form may carry beside its own keys."""
