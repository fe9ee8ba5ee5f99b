"""A value that is there but does not fit: its type, its range, its form, said in plain words with a cure."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.source import names
from authoring.source.wording import MOST_LISTED, kind_of, number_of, place_of, sentence, short, wanted

if TYPE_CHECKING:
    from authoring.source.document import Document
    from authoring.source.engine import Fault


def misfit(document: Document, fault: Fault, value: Any) -> Diagnostic:
    """Return the finding for one value and the keyword it breaks."""
    place = place_of(fault.path)
    source = document.places.source(fault.path)
    if fault.keyword == "type":
        message, cure = _type(fault, value, source)
        rule = names.WRONG_TYPE
    else:
        message, cure = _WORDINGS.get(fault.keyword, _general)(place, fault, value, source)
        cure = sentence(str(fault.schema.get("x-wording", ""))) or cure
        rule = names.WRONG_VALUE
    about_whole = isinstance(value, dict | list)
    span = document.places.key(fault.path) if about_whole else document.places.value(fault.path)
    return Diagnostic(rule, Severity.ERROR, sentence(message), span, cure)


_LAYOUT = {
    "array": 'Start each entry on a line of its own with "- ".',
    "object": 'Write lines of "key: value" below it, indented.',
}


def _type(fault: Fault, value: Any, source: str) -> tuple[str, str]:
    types = fault.schema["type"]
    allowed = [types] if isinstance(types, str) else list(types)
    message = f"{place_of(fault.path)} is {kind_of(value, source)}, but {wanted(allowed)} is wanted"
    if value is None and not source:
        entry = fault.path and isinstance(fault.path[-1], int)
        where = "behind the hyphen, or delete the entry" if entry else "behind the colon, or delete the key"
        return message, f"Write {wanted(allowed)} {where}."
    return message, _type_cure(allowed, value, source)


def _type_cure(allowed: list[str], value: Any, source: str) -> str:
    if "string" in allowed and not isinstance(value, dict | list):
        return f'Put it in quotes: "{source}".'
    # A text such as `step: [level-plug]` is a list to a YAML reader.
    if allowed == ["string"] and source.startswith(("[", "{")):
        return "Put the whole text in quotes, since it begins with a bracket."
    if isinstance(value, str):
        return _text_cure(allowed, value)
    if "integer" in allowed and isinstance(value, float):
        return "Write it without decimals."
    return _LAYOUT.get(allowed[0], f"Write {wanted(allowed)} instead.")


def _text_cure(allowed: list[str], value: str) -> str:
    if {"number", "integer"} & set(allowed):
        bare = value.strip().replace(".", "", 1).lstrip("+-")
        return "Take the quotes away." if bare.isdecimal() else "Write digits only."
    if "boolean" in allowed:
        return "Write true or false, without quotes."
    cure = _LAYOUT.get(allowed[0], f"Write {wanted(allowed)} instead.")
    # The commonest slip: `torque:8 N·m` without the space is one text to a YAML reader.
    return f"{cure} Put a space behind each colon." if ":" in value else cure


def _enum(place: str, fault: Fault, value: Any, source: str) -> tuple[str, str]:
    allowed = [str(one) for one in fault.schema["enum"]]
    if value is None or isinstance(value, dict | list):
        return f"{place} is {kind_of(value, source)}", f"Write one of: {', '.join(allowed[:MOST_LISTED])}."
    shown = value if isinstance(value, str) else source
    near = did_you_mean(shown, allowed)
    listed = f"Allowed are: {', '.join(allowed)}." if len(allowed) <= MOST_LISTED else ""
    cure = " ".join(part for part in (near, listed) if part)
    return f'"{short(shown)}" is not one of the values for {place}', cure or "Check its spelling."


def _const(place: str, fault: Fault, _value: Any, source: str) -> tuple[str, str]:
    return f'"{short(source)}" does not fit {place}', f"Write {fault.schema['const']}."


def _pattern(place: str, _fault: Fault, value: Any, _source: str) -> tuple[str, str]:
    misshapen = f'"{short(str(value))}" is not written in the form that {place} needs'
    return misshapen if str(value).strip() else f"{place} is an empty text", "Compare it with the others like it."


def _count(keyword: str, one: str, many: str) -> Callable[[str, Fault, Any, str], tuple[str, str]]:
    fewest = keyword.startswith("min")

    def words(place: str, fault: Fault, value: Any, _source: str) -> tuple[str, str]:
        limit = int(fault.schema[keyword])
        bound = "at least" if fewest else "at most"
        message = f"{place} has {number_of(len(value), one, many)}, but needs {bound} {limit}"
        return message, f"Add what is missing, or delete {place}." if fewest else "Take some out, or split it."

    return words


def _range(keyword: str, relation: str) -> Callable[[str, Fault, Any, str], tuple[str, str]]:
    def words(place: str, fault: Fault, _value: Any, source: str) -> tuple[str, str]:
        limit = fault.schema[keyword]
        return f"{place} is {short(source)}, but must be {relation} {limit}", f"Write a number {relation} {limit}."

    return words


def _unique(place: str, _fault: Fault, value: Any, _source: str) -> tuple[str, str]:
    twice = next((one for index, one in enumerate(value) if one in value[:index]), None)
    shown = f' ("{short(str(twice))}")' if isinstance(twice, str | int | float) else ""
    return f"{place} holds the same entry twice{shown}", "Keep one of the two."


def _general(place: str, fault: Fault, _value: Any, _source: str) -> tuple[str, str]:
    return f"{place} does not fit here ({fault.keyword})", "Compare it with the others like it."


_WORDINGS: dict[str, Callable[[str, Fault, Any, str], tuple[str, str]]] = {
    "enum": _enum,
    "const": _const,
    "pattern": _pattern,
    "minItems": _count("minItems", "entry", "entries"),
    "maxItems": _count("maxItems", "entry", "entries"),
    "minProperties": _count("minProperties", "key", "keys"),
    "maxProperties": _count("maxProperties", "key", "keys"),
    "minLength": _count("minLength", "character", "characters"),
    "maxLength": _count("maxLength", "character", "characters"),
    "minimum": _range("minimum", "at least"),
    "maximum": _range("maximum", "at most"),
    "exclusiveMinimum": _range("exclusiveMinimum", "more than"),
    "exclusiveMaximum": _range("exclusiveMaximum", "less than"),
    "uniqueItems": _unique,
}
