"""The number under which each step of a procedure is printed."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from authoring.model.procedure import Procedure


@lru_cache(maxsize=64)
def numbers(procedure: Procedure) -> Mapping[str, str]:
    """Return the number of each step by its id; methods of which one is done share a number and have a letter each.

    Steps are numbered as in the booklet for all fitments, so that a number means the same step in each of them.
    """
    found: dict[str, str] = {}
    count = 0
    for _, step in procedure.steps():
        count += step.method is None or step.method.is_first
        found[step.id] = f"{count}{step.method.letter if step.method is not None else ''}"
    return found
