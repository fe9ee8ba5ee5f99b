"""The reference part of the language's guide, written from the schemas and the actions."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from authoring.model.action_kind import ActionKind
from authoring.model.action_kinds import action_kinds
from authoring.model.assemble import schema_of
from authoring.model.language.manner import MANNER
from authoring.model.reference_of_quantities import quantities

BEGIN = "<!-- The reference below is written by `./run schema`; change the schemas, not this text. -->"
KINDS = ("shop", "stock", "equipment", "procedure")


def reference() -> str:
    """Return the reference as Markdown: quantities, a table of keys for each object of the language, the actions."""
    parts = [BEGIN, "", "## Reference", *quantities()]
    for kind in KINDS:
        parts += ["", f"### The {kind} file"]
        parts += _Tables(schema_of(kind)).lines()
    parts += ["", "### Actions", "", "| action | the text says | takes | more |", "| --- | --- | --- | --- |"]
    parts += [_action(kind) for kind in action_kinds().values()]
    parts += ["", "Any action may carry these as well, in its long form with `what`:"]
    parts += _Tables({"properties": MANNER}).lines()
    return "\n".join(parts) + "\n"


class _Tables:
    """The tables of one kind of file; an object that several places share is shown once."""

    def __init__(self, schema: dict[str, Any]) -> None:
        self._schema = schema
        self._shown: dict[str, str] = {}

    def lines(self) -> Iterator[str]:
        yield from self._object(self._schema, "")

    def _object(self, schema: dict[str, Any], path: str) -> Iterator[str]:
        below: list[tuple[str, dict[str, Any]]] = []
        yield ""
        if path:
            yield f"`{path}`: {schema.get('description', '')}"
            yield ""
        yield "| key | holds | |"
        yield "| --- | --- | --- |"
        required = schema.get("required", [])
        for key, given in schema["properties"].items():
            value = self._resolved(given)
            must = "needed" if key in required else ""
            inner, shared = self._inner(value)
            inside = f"{path}.{key}".lstrip(".")
            same = self._shown.get(shared, "") if shared else ""
            more = f" The same keys as `{same}`." if same and inner is not None else ""
            yield f"| `{key}` | {_kind(value)} | {_cell(value.get('description', '') + more, must)} |"
            if inner is not None and not same and shared != _ACTION:
                if shared:
                    self._shown[shared] = inside
                below.append((inside, inner))
        for name, inner in below:
            yield from self._object(inner, name)

    def _resolved(self, schema: dict[str, Any]) -> dict[str, Any]:
        name = _referred(schema)
        return self._schema["$defs"][name] if name else schema

    def _inner(self, schema: dict[str, Any]) -> tuple[dict[str, Any] | None, str]:
        """Return the object inside a value that has keys of its own, and the name under which it is shared.

        It is the value itself, each entry, or each named thing; the range that `when` may hold is no object here.
        """
        for candidate in (schema, schema.get("items", {}), schema.get("additionalProperties", {})):
            found = self._resolved(candidate) if isinstance(candidate, dict) else {}
            if "properties" in found and "from" not in found["properties"]:
                return found, _referred(candidate)
        return None, ""


_ACTION = "action"


def _referred(schema: dict[str, Any]) -> str:
    return str(schema.get("$ref", "")).rpartition("/")[2]


def _cell(description: str, must: str) -> str:
    text = description.replace("|", "\\|").replace("\n", " ")
    return f"**{must}** {text}".strip() if must else text


def _kind(schema: dict[str, Any]) -> str:
    if "enum" in schema:
        return "one of " + ", ".join(f"`{one}`" for one in schema["enum"])
    if schema.get("type") == "array" and "enum" in schema["items"]:
        return "a list of " + ", ".join(f"`{one}`" for one in schema["items"]["enum"])
    if schema.get("type") == "object" and isinstance(schema.get("additionalProperties"), dict):
        return "named things"
    names = {
        "string": "text",
        "array": "a list",
        "object": "a group of keys",
        "integer": "a whole number",
        "number": "a number",
        "boolean": "true or false",
    }
    types = schema.get("type", "object")
    return " or ".join(names[one] for one in ([types] if isinstance(types, str) else types))


def _words(schema: dict[str, Any]) -> str:
    return f" One of {', '.join(schema['enum'])}." if "enum" in schema else ""


def _action(kind: ActionKind) -> str:
    takes = " or ".join(sorted(one.value for one in kind.what.kinds))
    more = [f"`{key}`: {role.meaning}{' Needed.' if role.required else ''}" for key, role in kind.roles.items()]
    more += [
        f"`{key}`: {detail['description']}{_words(detail)}{' Needed.' if key in kind.needed else ''}"
        for key, detail in kind.details.items()
    ]
    more += ["`count`: How many; 1 when left out."] if kind.counted else []
    more += ["`outcomes`, `hold`, `critical-when`."] if kind.checkpoint else []
    more += [f"`way`: {', '.join(kind.ways)}."] if len(kind.ways) > 1 else []
    return f"| `{kind.name}` | {', '.join(kind.words)} | {takes} | {' '.join(more)} |"


def renewed(guide: str) -> str:
    """Return the guide with its reference written anew."""
    return guide.partition(BEGIN)[0] + reference()


def main(file: str) -> None:
    """Write the reference part of a guide anew."""
    path = Path(file)
    path.write_text(renewed(path.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1])
