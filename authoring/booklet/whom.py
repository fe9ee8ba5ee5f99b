"""Conditions to words: for which vehicles, for which choice of the job, and where which part was fitted."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.words import joined
from authoring.model.fitments import in_words
from authoring.model.library import Scope
from authoring.model.specification import When


def said(when: When, scope: Scope) -> str:
    """Return a condition in words, such as "cooler: always open; if chosen: raised hose"."""
    return "; ".join(_pieces(when, scope))


def only(when: When, scope: Scope) -> str:
    """Return the words that limit something to a condition; empty where there is none."""
    told = said(when, scope) if when else ""
    return f"Only {told}" if told else ""


def whose(when: When, scope: Scope) -> str:
    """Return a condition as it goes on after a verb: "for cooler: always open", "if chosen: raised hose"."""
    told = said(when, scope)
    seen = scope.equipment.features if scope.equipment is not None else {}
    return f"for {told}" if any(feature in seen for feature in when) else told


def _pieces(when: When, scope: Scope) -> Iterator[str]:
    """Yield what is seen at the vehicle first, then what the job decides: options, and parts that were fitted."""
    vehicle = scope.vehicle
    seen = scope.equipment.features if scope.equipment is not None else {}
    plain = {feature: values for feature, values in when.items() if feature in seen}
    if plain:
        yield in_words(plain, seen)
    decided = vehicle.features if vehicle is not None else {}
    for feature, values in when.items():
        if feature not in seen and feature in decided:
            words = joined([decided[feature].values.get(value, value) for value in values], "or")
            yield f"if chosen: {words}" if feature in scope.procedure.options else f"where the {words} is fitted"
