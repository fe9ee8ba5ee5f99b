"""The small words that every schema of the language is made of.

Each function returns one flat JSON Schema 2020-12 object.
`x-wording` beside a keyword is the sentence a person reads when that keyword refuses.
"""

from __future__ import annotations

from typing import Any, TypeAlias

JsonSchema: TypeAlias = dict[str, Any]

NAME_PATTERN = r"^[a-z][a-z0-9]*(-[a-z0-9]+)*$"
NUMBER_PATTERN = r"^[A-Z]{1,4}-[0-9]{2,5}$"
NAME_WORDING = (
    "a short name is lower-case letters and digits joined by hyphens and starts with a letter, such as level-plug"
)
NUMBER_WORDING = "a procedure's number is 1 to 4 capital letters, a hyphen and 2 to 5 digits, such as FL-110"


def text(meaning: str) -> JsonSchema:
    """Words that may not be empty."""
    return {
        "type": "string",
        "pattern": r"\S",
        "maxLength": 10_000,
        "x-wording": "write a text of 1 to 10000 characters, or delete the key",
        "description": meaning,
    }


def texts(meaning: str) -> JsonSchema:
    """A text, or a list of texts."""
    return text(meaning) | {
        "type": ["string", "array"],
        "items": text("one of several"),
        "minItems": 1,
        "x-wording": "write a text, or a list of texts",
    }


def name(meaning: str) -> JsonSchema:
    """The short name of one thing."""
    return {"type": "string", "pattern": NAME_PATTERN, "x-wording": NAME_WORDING, "description": meaning}


def names(meaning: str) -> JsonSchema:
    """A list of short names, none twice."""
    return {
        "type": "array",
        "items": name("a short name"),
        "minItems": 1,
        "uniqueItems": True,
        "x-wording": "a list of short names has at least one, and none twice",
        "description": meaning,
    }


def number(meaning: str) -> JsonSchema:
    """The number of a procedure."""
    return {"type": "string", "pattern": NUMBER_PATTERN, "x-wording": NUMBER_WORDING, "description": meaning}


def quantity(meaning: str) -> JsonSchema:
    """A number with its unit, as text; the reader of quantities judges it."""
    return {"type": "string", "description": meaning}


def whole(meaning: str, lowest: int = 1) -> JsonSchema:
    """A whole number with a lowest value."""
    return {
        "type": "integer",
        "minimum": lowest,
        "maximum": 10_000,
        "x-wording": f"this is a whole number from {lowest} to 10000",
        "description": meaning,
    }


def truth(meaning: str) -> JsonSchema:
    """Either true or false."""
    return {"type": "boolean", "description": meaning}


def date(meaning: str) -> JsonSchema:
    """A calendar date, ISO 8601."""
    return {
        "type": "string",
        "pattern": r"^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$",
        "x-wording": "a date is year-month-day, such as 2026-03-14",
        "description": meaning,
    }


def one_of(meaning: str, *allowed: str) -> JsonSchema:
    """One word of a closed list."""
    return {"type": "string", "enum": list(allowed), "description": meaning}


def group(meaning: str, keys: dict[str, JsonSchema], required: tuple[str, ...] = ()) -> JsonSchema:
    """A group of known keys; any other key is refused."""
    schema: JsonSchema = {
        "type": "object",
        "properties": keys,
        "additionalProperties": False,
        "description": meaning,
    }
    if required:
        schema["required"] = list(required)
    return schema


def named(meaning: str, each: JsonSchema) -> JsonSchema:
    """A group whose keys are short names of the author's own, each leading to the same shape."""
    return {
        "type": "object",
        "propertyNames": {"pattern": NAME_PATTERN, "x-wording": NAME_WORDING},
        "additionalProperties": each,
        "minProperties": 1,
        "x-wording": "a group of named things has at least one; leave the key out when there is none",
        "description": meaning,
    }


def listed(meaning: str, each: JsonSchema) -> JsonSchema:
    """A list of at least one."""
    return {
        "type": "array",
        "items": each,
        "minItems": 1,
        "x-wording": "a list has at least one entry",
        "description": meaning,
    }


def listed_or_none(meaning: str, each: JsonSchema) -> JsonSchema:
    """A list, or the word none: an absent list and an empty one are different facts."""
    return {
        "type": ["array", "string"],
        "items": each,
        "minItems": 1,
        "pattern": "^none$",
        "x-wording": "this is a list with at least one entry, or the single word none",
        "description": meaning,
    }


def when() -> JsonSchema:
    """For which fitments something is true: a value, or several, of each feature named."""
    return {
        "type": "object",
        "propertyNames": {"pattern": NAME_PATTERN, "x-wording": NAME_WORDING},
        "additionalProperties": {
            "type": ["string", "array", "object"],
            "items": name("a value of the feature"),
            "minItems": 1,
            "uniqueItems": True,
            "pattern": NAME_PATTERN,
            "properties": {"from": name("the first value"), "to": name("the last value")},
            "required": ["from", "to"],
            "additionalProperties": False,
            "x-wording": "write one value of the feature, or a list of values, none twice, such as [drum, disc]",
            "description": "the value, the list of values, or the range {from: ..., to: ...} for which it applies",
        },
        "minProperties": 1,
        "x-wording": "this names at least one feature",
        "description": "Only for these fitments: of each feature a value, a list of values, or a range of them as "
        "{from: ..., to: ...}; all must fit.",
    }


def allow() -> JsonSchema:
    """Which warnings are left standing here, and why."""
    return listed(
        "Warnings that are left standing in this file, section or step. Errors cannot be allowed.",
        group(
            "One rule and the reason why its warning is right to ignore here.",
            {
                "rule": name("The rule's id, as the finding shows it."),
                "why": text("Why it may stand; printed in the booklet."),
            },
            ("rule", "why"),
        ),
    )


def specification(meaning: str) -> JsonSchema:
    """A value with its source."""
    return group(
        meaning,
        {
            "value": quantity("the quantity, such as 42 ± 4 N·m, 40 to 44 mm, at least 3 mm"),
            "source": name("short name of the source that states it"),
            "at": text("where in that source: page, table, paragraph"),
        },
        ("value",),
    )
