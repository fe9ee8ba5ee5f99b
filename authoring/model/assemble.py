"""Assemble the schemas of the language, and write them where editors find them."""

from __future__ import annotations

import sys
from functools import cache
from pathlib import Path

from msgspec import json

from authoring.model.action_kinds import action_kinds
from authoring.model.language import checkpoint, equipment, manner, policy, procedure, shop, step, stock
from authoring.model.language.terms import JsonSchema, group

KINDS = ("procedure", "equipment", "stock", "shop")


@cache
def schema_of(kind: str) -> JsonSchema:
    """Return the whole schema of one kind of file; the actions' parts are put in here."""
    if kind == "procedure":
        shared = {step.ACTION: _action(), step.STEP: step.step(), checkpoint.OUTCOME: checkpoint.outcome()}
        return procedure.SCHEMA | {"$defs": shared | manner.MANNER}
    if kind == "shop":
        return shop.SCHEMA | {"$defs": {policy.ACT: policy.act(tuple(action_kinds()))}}
    return {"stock": stock.SCHEMA, "equipment": equipment.SCHEMA}[kind]


def _action() -> JsonSchema:
    keys = {name: kind.schema() for name, kind in action_kinds().items()}
    return group("One action: its name, and what it is done to.", keys) | {
        "minProperties": 1,
        "maxProperties": 1,
        "x-wording": "an entry of do holds exactly one action; begin a new entry with a hyphen for the next",
    }


def as_file(kind: str) -> str:
    """Return the text of the committed schema of one kind of file."""
    head = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"Bayleaf {kind} file"}
    return json.format(json.encode(head | schema_of(kind)), indent=2).decode() + "\n"


def main(folder: str) -> None:
    """Write `<kind>.schema.json` for every kind into `folder`."""
    for kind in KINDS:
        (Path(folder) / f"{kind}.schema.json").write_text(as_file(kind), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1])
