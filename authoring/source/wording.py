"""What a value is and what is wanted, in workshop words instead of the words of data formats."""

from __future__ import annotations

from typing import Any

from authoring.diagnostics.words import joined

_LONGEST = 40
MOST_LISTED = 12

_WANTED = {
    "string": "text",
    "array": "a list",
    "object": "a group of keys",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
    "null": "nothing",
}


def kind_of(value: Any, source: str) -> str:
    """Say what a value is, with the value itself where it is short: `a number (12)`.

    `source` is the value as the author typed it.
    """
    if value is None:
        return f"empty ({short(source)})" if source else "empty"
    if isinstance(value, bool):
        return f"the sign for yes or no ({short(source)})"
    if isinstance(value, int | float):
        return f"a number ({short(source)})"
    if isinstance(value, str):
        return f'text ("{short(value)}")' if value else "an empty text"
    return "a list" if isinstance(value, list) else "a group of keys"


def wanted(types: Any) -> str:
    """Say which kinds of value a schema's `type` allows: `text or a list`."""
    names = [types] if isinstance(types, str) else list(types)
    return joined([_WANTED.get(name, name) for name in names], "or")


def short(text: str) -> str:
    """Return a text on one line, cut at 40 characters."""
    text = " ".join(text.split())
    return text if len(text) <= _LONGEST else text[: _LONGEST - 1] + "…"


def place_of(path: tuple[str | int, ...]) -> str:
    """Name a place in a file: `"torque"`, `entry 3 of "steps"`, or `this file`."""
    if not path:
        return "this file"
    last = path[-1]
    if isinstance(last, str):
        return f'"{short(last)}"'
    above = path[:-1]
    return f"entry {last + 1} of {place_of(above)}" if above else f"entry {last + 1}"


def number_of(count: int, one: str, many: str) -> str:
    """Say a count with its noun: `no entry`, `1 entry`, `3 entries`."""
    if count == 0:
        return f"no {one}"
    return f"{count} {one}" if count == 1 else f"{count} {many}"


def sentence(text: str) -> str:
    """Return a text that starts with a capital letter and ends with a stop."""
    text = text.strip()
    if not text:
        return ""
    text = text[0].upper() + text[1:]
    return text if text.endswith((".", "!", "?")) else text + "."
