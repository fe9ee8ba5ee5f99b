"""One schema, compiled once, that turns a document of the wrong shape into findings an author can act on."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span, in_order
from authoring.diagnostics.nearest import did_you_mean, nearest
from authoring.source import names
from authoring.source.engine import FALSE, Fault, compiled_check
from authoring.source.misfit import misfit
from authoring.source.wording import MOST_LISTED, place_of, sentence, short

if TYPE_CHECKING:
    from authoring.source.document import Document
    from authoring.source.engine import Path


class Shape:
    """A compiled schema of draft 2020-12.

    Schemas are flat: `properties` with `additionalProperties: false`, `$ref` into `$defs`, no `allOf`,
    `anyOf` or `oneOf`.
    `description` beside a property says what its key is for; `x-wording` beside `pattern`, `minItems` and
    the like says in one sentence what is wanted.
    """

    def __init__(self, schema: dict[str, Any]) -> None:
        self._schema = schema
        self._check = compiled_check(schema)

    def check(self, document: Document) -> list[Diagnostic]:
        """Return the findings of a document in order of place; never raises."""
        faults = _leading(list(self._check(document.data)))
        return in_order([finding for fault in faults for finding in self._findings(document, fault)])

    def _findings(self, document: Document, fault: Fault) -> Iterator[Diagnostic]:
        if fault.name is not None:
            yield _bad_name(document, fault)
        elif fault.keyword == "required":
            yield from self._missing(document, fault)
        elif fault.keyword in {"additionalProperties", "unevaluatedProperties"}:
            yield from _unknown(document, fault)
        elif fault.keyword == FALSE:
            yield _not_here(document, fault.path)
        else:
            yield misfit(document, fault, _value_at(document.data, fault.path))

    def _missing(self, document: Document, fault: Fault) -> Iterator[Diagnostic]:
        present = _value_at(document.data, fault.path)
        known = _known(fault.schema)
        # A mistyped key is told once, as the unknown key that it is.
        mistyped = {nearest(key, known) for key in present if key not in known}
        span = _head(document, fault.path)
        for key in fault.schema["required"]:
            if key in present or key in mistyped:
                continue
            message = sentence(f'"{key}" is missing in {place_of(fault.path)}')
            purpose = sentence(self._description(fault.schema, key))
            yield Diagnostic(names.MISSING_KEY, Severity.ERROR, message, span, f'Add "{key}". {purpose}'.strip())

    def _description(self, owner: dict[str, Any], key: str) -> str:
        """Return what a property is for, from beside it or from the definition it refers to."""
        about = owner.get("properties", {}).get(key, {})
        seen = 0
        while isinstance(about, dict) and "description" not in about and "$ref" in about and seen < MOST_LISTED:
            about, seen = self._refer(about["$ref"]), seen + 1
        return str(about.get("description", "")) if isinstance(about, dict) else ""

    def _refer(self, reference: str) -> Any:
        found: Any = self._schema
        for step in reference.removeprefix("#").split("/")[1:]:
            found = found.get(step, {}) if isinstance(found, dict) else {}
        return found


def _leading(faults: list[Fault]) -> list[Fault]:
    """Leave out what follows from a wrong type at the same place: one fault, one finding."""
    mistyped = {fault.path for fault in faults if fault.keyword == "type" and fault.name is None}
    unique: dict[tuple[Path, str, str | None], Fault] = {}
    for fault in faults:
        if fault.name is None and fault.path in mistyped and fault.keyword != "type":
            continue
        unique.setdefault((fault.path, fault.keyword, fault.name), fault)
    return list(unique.values())


def _unknown(document: Document, fault: Fault) -> Iterator[Diagnostic]:
    known = _known(fault.schema)
    patterns = fault.schema.get("patternProperties", {})
    present = _value_at(document.data, fault.path)
    for key in present:
        if key in known or any(re.search(pattern, key) for pattern in patterns):
            continue
        if present[key] is None and document.places.source(fault.path).startswith("{"):
            yield _torn(document, (*fault.path, key))
            continue
        message = f'The key "{short(key)}" is unknown in {place_of(fault.path)}.'
        free = [one for one in known if one not in present]
        cure = did_you_mean(key, free) or did_you_mean(key, known) or _listed(known, "Keys known here")
        span = document.places.key((*fault.path, key))
        yield Diagnostic(names.UNKNOWN_KEY, Severity.ERROR, message, span, cure)


def _torn(document: Document, path: Path) -> Diagnostic:
    """Tell of `{value: 1,6 L}` and `{place: left, below}`: inside braces a comma begins a new entry."""
    message = f'A comma inside {{ }} begins a new entry here: "{short(str(path[-1]))}" is torn off.'
    cure = "Put a text with a comma in quotes; in a number write a decimal point, such as 1.6 L."
    return Diagnostic(names.WRONG_VALUE, Severity.ERROR, message, document.places.key(path), cure)


def _bad_name(document: Document, fault: Fault) -> Diagnostic:
    key = fault.name or ""
    span = document.places.key((*fault.path, key))
    message = f'"{short(key)}" cannot be a key of {place_of(fault.path)}.'
    allowed = [str(one) for one in fault.schema.get("enum", [])]
    cure = sentence(str(fault.schema.get("x-wording", "")))
    if allowed and not cure:
        cure = did_you_mean(key, allowed) or _listed(allowed, "Keys known here")
    rule = names.UNKNOWN_KEY if allowed else names.WRONG_VALUE
    return Diagnostic(rule, Severity.ERROR, message, span, cure or "Rename the key.")


def _not_here(document: Document, path: Path) -> Diagnostic:
    message = sentence(f"{place_of(path)} cannot stand in {place_of(path[:-1])}")
    return Diagnostic(names.UNKNOWN_KEY, Severity.ERROR, message, document.places.key(path), "Delete it.")


def _listed(known: list[str], lead: str) -> str:
    if not known:
        return "Delete it."
    # All are listed, however many: whoever types an unknown action wants to see the actions there are.
    return f"{lead}: {', '.join(known)}."


def _known(schema: dict[str, Any]) -> list[str]:
    return list(schema.get("properties", {}))


def _head(document: Document, path: Path) -> Span:
    """Return the key that leads to an object, or the object's first character where no key does."""
    span = document.places.key(path)
    if path and isinstance(path[-1], str):
        return span
    return Span(span.file, span.line, span.column, span.line, span.column + 1)


def _value_at(data: Any, path: Path) -> Any:
    for step in path:
        data = data[step]
    return data
