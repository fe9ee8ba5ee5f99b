"""The smallest library that the two still disagree on: steps, actions and keys are dropped one by one."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from typing import Any

import yaml

from tests.proof_reference.compare import compare_files
from tests.proof_reference.written import procedure

Group = dict[str, Any]

_KEPT = {"procedure", "title", "equipment", "sections", "steps", "do", "either", "what", "found", "then", "outcomes"}
"""The keys without which nothing is left to read."""


def shrunk(files: Mapping[str, bytes], rules: set[str]) -> dict[str, bytes]:
    """Return a smaller library about which checker and reference differ in one of these rules."""
    kept = dict(files)
    smaller = True
    while smaller:
        smaller = False
        for candidate in _smaller(kept):
            if _differ(candidate, rules):
                kept = candidate
                smaller = True
                break
    return kept


def _differ(files: Mapping[str, bytes], rules: set[str]) -> bool:
    try:
        compared = compare_files(files)
    except (AssertionError, KeyError, IndexError):
        # What was dropped is asked for elsewhere.
        return False
    return bool(compared.differing() & rules)


def _smaller(files: Mapping[str, bytes]) -> Iterator[dict[str, bytes]]:
    for name, content in files.items():
        if not name.startswith("RW-"):
            continue
        others = {other: one for other, one in files.items() if other != name}
        if len([one for one in files if one.startswith("RW-")]) > 1:
            yield others
        told = yaml.safe_load(content)
        told.pop("revisions")
        for one in _without(told):
            yield {**others, name: procedure(one).encode()}


def _without(told: Group) -> Iterator[Group]:
    """Yield a procedure with one thing less."""
    for path in sorted(_paths(told, ()), key=len):
        smaller = copy.deepcopy(told)
        holder: Any = smaller
        for key in path[:-1]:
            holder = holder[key]
        del holder[path[-1]]
        if holder or isinstance(holder, dict):
            yield smaller


def _paths(value: Any, path: tuple[Any, ...]) -> Iterator[tuple[Any, ...]]:
    entries: Any = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, one in entries:
        if key not in _KEPT:
            yield (*path, key)
        yield from _paths(one, (*path, key))
