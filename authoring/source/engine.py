"""The faults a JSON Schema library sees in plain data, in one shape whichever library is installed."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

from msgspec import Struct

Path = tuple[str | int, ...]
Check = Callable[[Any], Iterator["Fault"]]

FALSE = "false"
PROPERTY_NAMES = "propertyNames"
_FALSE_SCHEMA = "falseSchema"
_DIGITS = re.compile(r"\+?[0-9]{1,20}")


class Fault(Struct, frozen=True):
    """One broken keyword: where in the data, which keyword, and the subschema it stands in.

    `name` is the key at fault when the subschema is about a key's name, else None.
    """

    path: Path
    keyword: str
    schema: dict[str, Any]
    name: str | None = None


def compiled_check(schema: dict[str, Any]) -> Check:
    """Compile a schema of draft 2020-12 with the fast library, or the slow one where that has no wheel.

    The data it checks has no empty key: the reader refuses it, and the fast library leaves it out of its paths.
    """
    try:
        return _fast_check(schema)
    except ImportError:
        return reference_check(schema)


def _fast_check(schema: dict[str, Any]) -> Check:
    import jsonschema_rs  # noqa: PLC0415 - missing on some machines, and reading alone must not pay for it

    validator = jsonschema_rs.Draft202012Validator(schema)

    def check(data: Any) -> Iterator[Fault]:
        try:
            return iter([_fault(schema, data, error) for error in validator.iter_errors(data)])
        except LookupError:
            return reference_check(schema)(data)

    return check


def _fault(schema: dict[str, Any], data: Any, error: Any) -> Fault:
    path = _within(data, error.instance_path)
    if error.kind.name == PROPERTY_NAMES:
        inner = error.kind.error
        return Fault(path, inner.kind.name, _owner(schema, error.schema_path), str(inner.instance))
    if error.kind.name == _FALSE_SCHEMA:
        return Fault(path, FALSE, {})
    return Fault(path, error.kind.name, _owner(schema, error.schema_path))


def reference_check(schema: dict[str, Any]) -> Check:
    """Compile a schema with the reference library: the fallback, and the second opinion of the tests."""
    import jsonschema  # noqa: PLC0415 - takes 75 ms to import and is the fallback only

    def pattern(_validator: Any, wanted: str, value: Any, _schema: Any) -> Iterator[jsonschema.ValidationError]:
        # Python's $ also matches in front of a last line end, which the standard's does not.
        anchored = re.sub(r"(?<!\\)\$$", r"\\Z", wanted)
        if isinstance(value, str) and not re.search(anchored, value):
            yield jsonschema.ValidationError(f"{value!r} does not match {wanted!r}")

    keywords = {"pattern": pattern}
    kind = jsonschema.validators.extend(jsonschema.Draft202012Validator, keywords)  # type: ignore[no-untyped-call]  # its stub has no types
    validator = kind(schema)

    def check(data: Any) -> Iterator[Fault]:
        for error in validator.iter_errors(data):
            path: Path = tuple(error.absolute_path)
            owner = error.schema if isinstance(error.schema, dict) else {}
            about_name = PROPERTY_NAMES in list(error.relative_schema_path)[-2:-1]
            yield Fault(path, error.validator or FALSE, owner, str(error.instance) if about_name else None)

    return check


def _within(data: Any, steps: list[str | int]) -> Path:
    """Return a path with the keys as they are: the fast library gives the key "01" back as the number 1.

    Raises:
        LookupError: two keys spell the same number, or no key does.
    """
    path: list[str | int] = []
    for step in steps:
        if isinstance(data, dict) and isinstance(step, int):
            alike = [key for key in data if _DIGITS.fullmatch(key) and int(key) == step]
            if len(alike) != 1:
                raise LookupError(step)
            path += alike
        else:
            path.append(step)
        data = data[path[-1]]
    return tuple(path)


def _owner(schema: Any, path: list[str | int]) -> dict[str, Any]:
    """Return the subschema that holds the keyword at the end of a canonical schema path."""
    for step in path[:-1]:
        schema = schema[step]
    return schema if isinstance(schema, dict) else {}
