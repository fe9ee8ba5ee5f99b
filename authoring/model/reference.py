"""The reference part of the language's guide, written from the schemas and the actions."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from authoring.model.action_kind import ActionKind
from authoring.model.action_kinds import action_kinds
from authoring.model.assemble import schema_of

BEGIN = "<!-- The reference below is written by `./run schema`; change the schemas, not this text. -->"
KINDS = ("shop", "stock", "equipment", "procedure")


def reference() -> str:
    """Return the reference as Markdown: a table of keys for each object of the language, then the actions."""
    parts = [BEGIN, "", "## Reference"]
    for kind in KINDS:
        parts += ["", f"### The {kind} file"]
        parts += _object(schema_of(kind), "")
    parts += ["", "### Actions", "", "| action | the text says | takes | more |", "| --- | --- | --- | --- |"]
    parts += [_action(kind) for kind in action_kinds().values()]
    return "\n".join(parts) + "\n"


def _object(schema: dict[str, Any], path: str) -> Iterator[str]:
    below: list[tuple[str, dict[str, Any]]] = []
    yield ""
    if path:
        yield f"`{path}`: {schema.get('description', '')}"
        yield ""
    yield "| key | holds | |"
    yield "| --- | --- | --- |"
    required = schema.get("required", [])
    for key, value in schema["properties"].items():
        must = "needed" if key in required else ""
        yield f"| `{key}` | {_kind(value)} | {_cell(value.get('description', ''), must)} |"
        inner = _inner(value)
        if inner is not None:
            below.append((f"{path}.{key}".lstrip("."), inner))
    for name, inner in below:
        yield from _object(inner, name)


def _cell(description: str, must: str) -> str:
    text = description.replace("|", "\\|").replace("\n", " ")
    return f"**{must}** {text}".strip() if must else text


def _kind(schema: dict[str, Any]) -> str:
    if "enum" in schema:
        return "one of " + ", ".join(f"`{one}`" for one in schema["enum"])
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


def _inner(schema: dict[str, Any]) -> dict[str, Any] | None:
    """Return the object inside a value that has keys of its own: itself, each entry, or each named thing."""
    for candidate in (schema, schema.get("items", {}), schema.get("additionalProperties", {})):
        if isinstance(candidate, dict) and "properties" in candidate:
            return candidate
    return None


def _action(kind: ActionKind) -> str:
    takes = " or ".join(sorted(one.value for one in kind.what.kinds))
    more = [f"`{key}`: {role.meaning}{' Needed.' if role.required else ''}" for key, role in kind.roles.items()]
    more += ["`count`: How many; 1 when left out."] if kind.counted else []
    more += ["`outcomes`, `hold`."] if kind.checkpoint else []
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
