"""Plain scalars to values after the core schema of YAML 1.2.2, section 10.3.2."""

from __future__ import annotations

import math
import re

MAX_DIGITS = 100

_NUMBER = re.compile(
    r"(?P<int>[-+]?[0-9]+$|0o[0-7]+$|0x[0-9a-fA-F]+$)"
    r"|(?P<float>[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$)"
    r"|(?P<none>[-+]?\.(?:inf|Inf|INF)$|\.(?:nan|NaN|NAN)$)"
)
_WORDS: dict[str, bool | None] = {
    "": None,
    "~": None,
    "null": None,
    "Null": None,
    "NULL": None,
    "true": True,
    "True": True,
    "TRUE": True,
    "false": False,
    "False": False,
    "FALSE": False,
}
_FIRST = frozenset("-+.0123456789")


class NumberLimitError(ValueError):
    """A number that cannot be kept as it is written; its text says why."""


def plain_value(text: str) -> str | int | float | bool | None:
    """Return the value of an unquoted scalar.

    Raises:
        NumberLimitError: the number is too long, not finite, or too small to be told from zero.
    """
    if text[:1] not in _FIRST:
        return _WORDS.get(text, text)
    found = _NUMBER.match(text)
    if found is None:
        return text
    if found.lastgroup == "none":
        reason = "is no finite number"
        raise NumberLimitError(reason)
    if len(text) > MAX_DIGITS:
        reason = f"has more than {MAX_DIGITS} digits"
        raise NumberLimitError(reason)
    return _integer(text) if found.lastgroup == "int" else _decimal(text)


def _integer(text: str) -> int:
    if text.startswith("0o"):
        return int(text.removeprefix("0o"), base=8)
    return int(text, base=16) if text.startswith("0x") else int(text)


def _decimal(text: str) -> float:
    value = float(text)
    if math.isinf(value):
        reason = "is too large to be kept"
        raise NumberLimitError(reason)
    if value == 0 and re.match(r"[-+.0]*[1-9]", text):
        reason = "is too small to be told from zero"
        raise NumberLimitError(reason)
    return value
