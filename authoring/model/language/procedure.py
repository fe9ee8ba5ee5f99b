"""The schema of a procedure file, but for the steps and actions, which bring their own parts."""

from __future__ import annotations

from authoring.model.language.choice import choice
from authoring.model.language.figure import figure
from authoring.model.language.hearers import hearers
from authoring.model.language.safety import message
from authoring.model.language.states import states
from authoring.model.language.step import section
from authoring.model.language.terms import (
    NAME_PATTERN,
    NAME_WORDING,
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
    text,
    when,
    whole,
)
from authoring.model.language.values import values

_CONDITION = group(
    "One condition: a sentence, or a group that also says how it is reached.",
    {
        "so": text("What must be so."),
        "by": number("The procedure that brings it about."),
        "afterwards": text("What becomes of it at the end."),
        "when": when(),
    },
    ("so",),
) | {
    "type": ["string", "object"],
    "pattern": r"\S",
    "maxLength": 10_000,
    "x-wording": "write a sentence of 1 to 10000 characters, or a group with the key so",
}

_OPTION = group(
    "One option: something that is decided in this job.",
    {
        "name": text("The name, without an article, such as: magnetic drain plug."),
        "question": text("What is asked."),
        "decided-by": one_of("Who decides.", "customer", "lead", "technician"),
        "why": text("What speaks for and against it."),
        "values": named("What can be chosen.", text("What this choice is called, such as: fitted.")),
    },
    ("name", "question", "decided-by", "values"),
)

_MODIFICATION = group(
    "One modification: the machine leaves different from how it came.",
    {
        "name": text("The name, without an article."),
        "when": when(),
        "as-found": text("How it was."),
        "as-left": text("How it is now."),
        "why": text("What it is for."),
        "adds": names("Parts and fasteners that had no counterpart."),
        "replaces": {
            "type": "object",
            "propertyNames": {"pattern": NAME_PATTERN, "x-wording": NAME_WORDING},
            "additionalProperties": name("the new part"),
            "minProperties": 1,
            "x-wording": "this names at least one old thing and the new part",
            "description": "What was exchanged: each old thing and the part in its place.",
        },
        "leaves-out": names("Items and fasteners that stay off."),
        "tell": hearers(),
    },
    ("name", "as-found", "as-left", "tell"),
)

_WHILE_THERE = group(
    "One thing to look at.",
    {
        "look": text("What to look at, and for what."),
        "when": when(),
        "only-if": text("For vehicles used in a certain way: which."),
    },
    ("look",),
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
        "conditions": listed_or_none("What must be so before the job starts.", _CONDITION),
        "needs": states("The state in which the machine must be, such as {engine: stopped}."),
        "leaves": states("The state in which the machine is left, where it differs from how it came."),
        "hazards": listed_or_none(
            "Safety messages that hold for the whole job.", name("short name of a safety message")
        ),
        "values": values(),
        "safety": named("Safety messages of this procedure alone.", message()),
        "options": named("What is decided in this job.", _OPTION),
        "modifications": named("In what the machine leaves different.", _MODIFICATION),
        "choices": named("Part choices.", choice()),
        "figures": named("Pictures.", figure()),
        "sections": listed("The work, in order.", section()),
        "while-there": listed("What else to look at while the machine is open or up.", _WHILE_THERE),
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
