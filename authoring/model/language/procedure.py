"""The schema of a procedure file, but for the actions, which bring their own part."""

from __future__ import annotations

from authoring.model.language.equipment import values
from authoring.model.language.safety import message
from authoring.model.language.terms import (
    NAME_PATTERN,
    NAME_WORDING,
    JsonSchema,
    allow,
    date,
    group,
    listed,
    listed_or_none,
    name,
    named,
    names,
    number,
    one_of,
    quantity,
    specification,
    text,
    truth,
    when,
    whole,
)

ACTION = "action"

PHASES = ("prepare", "remove", "work", "refit", "test", "close")
"""The parts of a job, in the order in which they follow one another (requirement A3)."""


def outcomes() -> JsonSchema:
    """Return the schema of a checkpoint's outcomes."""
    return listed(
        "What the checkpoint may show, and what follows from each.",
        group(
            "One outcome.",
            {
                "found": text("What is seen, felt, heard, counted or read."),
                "then": one_of(
                    "What follows: go-on; put-right (mend it here, then check again); do (carry out a procedure and "
                    "come back); go-to (a step); stop; ask-customer.",
                    "go-on",
                    "put-right",
                    "do",
                    "go-to",
                    "stop",
                    "ask-customer",
                ),
                "to": {
                    "type": "string",
                    "pattern": r"^([A-Z]{1,4}-[0-9]{2,5}|[a-z][a-z0-9]*(-[a-z0-9]+)*)$",
                    "x-wording": "this is the short name of a step, or the number of a procedure",
                    "description": "With do: the procedure's number. With go-to: the step's id.",
                },
                "say": text("What the reader is told."),
            },
            ("found", "then"),
        ),
    )


_CHOICE = group(
    "A part choice: which of several look-alike parts is the right one.",
    {
        "name": text("What the part is called, whichever it is, without an article."),
        "question": text("What decides, such as: Which brake does the machine have?"),
        "parts": listed(
            "The parts to choose from.",
            group(
                "One part that may be the right one.",
                {
                    "part": name("Short name of the part in stock."),
                    "when": when(),
                    "size": specification("The measured size that tells it, such as 9.0 ± 0.3 mm, with its source."),
                    "tell": text("How to tell it from the others."),
                },
                ("part", "tell"),
            ),
        ),
    },
    ("name", "question", "parts"),
)

_SHARE = {"type": "number", "minimum": 0, "maximum": 100, "x-wording": "this is a number from 0 to 100"}

_FIGURE = group(
    "A picture.",
    {
        "file": {
            "type": "string",
            "pattern": r"^[A-Za-z0-9][A-Za-z0-9_/-]*\.(svg|png|jpg|jpeg)$",
            "x-wording": "this is the path of an SVG, PNG or JPEG file inside the library, with forward slashes",
            "description": "Path of the picture inside the library.",
        },
        "title": text("What the picture shows, as a title."),
        "alt": text("The same for somebody who cannot see it: what is where."),
        "callouts": listed(
            "The numbers on the picture, in order.",
            group(
                "One number and what it points at.",
                {
                    "on": name("Short name of the thing pointed at."),
                    "across": _SHARE | {"description": "How far across, in percent of the picture's width."},
                    "down": _SHARE | {"description": "How far down, in percent of the picture's height."},
                },
                ("on", "across", "down"),
            ),
        ),
    },
    ("file", "title"),
)

_STEP = group(
    "One step: an instruction and what it does to the machine.",
    {
        "step": text("The instruction; things are named in brackets, such as: Remove the [level-plug]."),
        "id": name("Short name, where something refers to the step."),
        "when": when(),
        "allow": allow(),
        "do": listed("The actions, in order.", {"$ref": f"#/$defs/{ACTION}"}),
        "with": names("Tools and consumables the step uses."),
        "safety": names("Safety messages that must stand before the step."),
        "figures": names("Figures that belong to the step."),
        "why": text("The reason, where knowing it makes the work better."),
        "tip": text("An easier way or a piece of advice; no safety message."),
    },
    ("do",),
)

_SECTION = group(
    "A run of steps under a heading.",
    {
        "id": name("Short name, where something refers to the section."),
        "title": text("The heading."),
        "phase": one_of(
            "Which part of the job it is; sections follow one another in this order.",
            *PHASES,
        ),
        "when": when(),
        "allow": allow(),
        "intro": text("What the section is about."),
        "safety": names("Safety messages that hold for every step of the section."),
        "steps": listed("The steps, in order.", _STEP),
    },
    ("title", "steps"),
)

_REVISION = group(
    "One revision.",
    {
        "revision": {
            "type": "string",
            "pattern": r"^[A-Z]{1,2}$",
            "x-wording": "a revision is one or two capital letters, such as A",
            "description": "The revision's letter.",
        },
        "date": date("The day it was issued."),
        "author": name("Who wrote it: a short name from the shop's people."),
        "approver": name("Who approved it: somebody else."),
        "reason": text("What changed and why."),
    },
    ("revision", "date", "author", "approver", "reason"),
)

SCHEMA = group(
    "A procedure file: one job.",
    {
        "procedure": number("The procedure's number."),
        "title": text("The job, verb first, such as: Check the oil level of the drop box."),
        "equipment": name("Short name of the equipment worked on."),
        "allow": allow(),
        "covers": {
            "type": "object",
            "propertyNames": {"pattern": NAME_PATTERN, "x-wording": NAME_WORDING},
            "additionalProperties": names("the values covered"),
            "minProperties": 1,
            "x-wording": "this names at least one feature; leave the key out to cover every vehicle",
            "description": "The values of each feature that the procedure covers; a feature left out is covered whole.",
        },
        "job": text("Why and when the job is done."),
        "audience": text("Who may do it: training, licence."),
        "persons": whole("How many people it takes."),
        "time": quantity("How long it takes, such as 45 min."),
        "conditions": listed_or_none("What must be so before the job starts.", text("one condition")),
        "hazards": listed_or_none(
            "Safety messages that hold for the whole job.", name("short name of a safety message")
        ),
        "values": values(),
        "safety": named("Safety messages of this procedure alone.", message()),
        "choices": named("Part choices.", _CHOICE),
        "figures": named("Pictures.", _FIGURE),
        "sections": listed("The work, in order.", _SECTION),
        "trial": {
            "type": ["object", "string"],
            "pattern": "^none$",
            "x-wording": "this is the record of a trial, or the single word none",
            "properties": {
                "date": date("The day of the trial."),
                "by": name("Who did the job from the booklet."),
                "on": text("On which machine."),
                "result": text("What came of it."),
            },
            "required": ["date", "by", "on", "result"],
            "additionalProperties": False,
            "description": "The trial of this revision on a machine, or none.",
        },
        "revisions": listed("All revisions, the newest first.", _REVISION),
    },
    ("procedure", "title", "equipment", "sections", "revisions"),
)

CHECKPOINT_KEYS: dict[str, JsonSchema] = {
    "outcomes": outcomes(),
    "hold": truth("true when nobody goes on until it is met: a hold point."),
}
