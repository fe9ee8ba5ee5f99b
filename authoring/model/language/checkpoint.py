"""The schema of outcomes: what a checkpoint shows, or what is noticed unasked, and what follows."""

from __future__ import annotations

from authoring.model.language.terms import JsonSchema, group, listed, names, one_of, text, truth, when, whole

THEN = ("go-on", "put-right", "do", "do-after", "go-to", "stop", "ask-customer", "next-time")

OUTCOME = "outcome"


def outcome() -> JsonSchema:
    """Return the schema of one outcome."""
    return group(
        "One outcome.",
        {
            "found": text("What is seen, felt, heard, counted or read."),
            "then": one_of(
                "What follows: go-on; put-right (mend it here, then check again); do (carry out a procedure and "
                "come back); do-after (a procedure that follows as a job of its own); go-to (a step); stop; "
                "ask-customer; next-time (write it down, and go on).",
                *THEN,
            ),
            "to": {
                "type": "string",
                "pattern": r"^([A-Z]{1,4}-[0-9]{2,5}|[a-z][a-z0-9]*(-[a-z0-9]+)*)$",
                "x-wording": "this is the short name of a step, or the number of a procedure",
                "description": "With do and do-after: the procedure's number. With go-to: the step's id.",
            },
            "say": text("What the reader is told."),
            "at-most": whole("With put-right or a go-to that leads back: how many times."),
            "else": text("What happens when that did not help."),
            "like": whole("The number on the picture that it looks like."),
            "bears-on": names("Other things that it means something for; say tells what."),
            "when": when(),
        },
        ("found", "then"),
    )


def outcomes(meaning: str) -> JsonSchema:
    """Return the schema of a list of outcomes."""
    return listed(meaning, {"$ref": f"#/$defs/{OUTCOME}"})


CHECKPOINT_KEYS: dict[str, JsonSchema] = {
    "outcomes": outcomes("What the checkpoint may show, and what follows from each."),
    "hold": truth("true when nobody goes on until it is met: a hold point."),
    "critical-when": when() | {"description": "The vehicles for which the result decides; elsewhere it is a habit."},
}
