"""For which fitments something applies, and how that is said."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping
from typing import TypeAlias

from authoring.diagnostics.words import joined
from authoring.model.specification import When
from authoring.model.things import Equipment, Feature

Fitment: TypeAlias = Mapping[str, str]
"""A value of each of some features."""


def may_hold(when: When, selection: Fitment) -> bool:
    """Tell whether `when` can hold once the features in `selection` have their values; others are open."""
    return all(selection[feature] in values for feature, values in when.items() if feature in selection)


def covered(equipment: Equipment, covers: When) -> dict[str, tuple[str, ...]]:
    """Return, for each feature of the equipment, the values a procedure covers."""
    found = {}
    for feature in equipment.features.values():
        kept = frozenset(covers.get(feature.id, feature.values))
        found[feature.id] = tuple(value for value in feature.values if value in kept)
    return found


def fitments(equipment: Equipment, covers: When, features: Iterable[str]) -> Iterator[dict[str, str]]:
    """Yield every fitment a procedure covers, over the named features only.

    A combination the equipment declares never to occur is left out.
    """
    values = covered(equipment, covers)
    mentioned = [feature for feature in equipment.features if feature in set(features)]
    for picked in itertools.product(*(values[feature] for feature in mentioned)):
        fitment = dict(zip(mentioned, picked, strict=True))
        if not any(_happens(never, fitment) for never in equipment.never):
            yield fitment


def concerned(equipment: Equipment, features: Iterable[str]) -> set[str]:
    """Return the named features and all that declared impossible combinations tie to them."""
    tied: dict[str, set[str]] = {}
    for never in equipment.never:
        for feature in never:
            tied.setdefault(feature, set()).update(never)
    found = set(features)
    waiting = list(found)
    while waiting:
        new = tied.get(waiting.pop(), set()) - found
        found |= new
        waiting += new
    return found


def combinations(equipment: Equipment, covers: When, features: Iterable[str]) -> int:
    """Return how many combinations `fitments` goes through."""
    wanted = set(features)
    return math.prod(len(values) for feature, values in covered(equipment, covers).items() if feature in wanted)


def together(*whens: When) -> When:
    """Return the one condition that holds where all of these hold; no value may be left of a feature."""
    joined: dict[str, tuple[str, ...]] = {}
    for when in whens:
        for feature, values in when.items():
            joined[feature] = tuple(value for value in joined.get(feature, values) if value in values)
    return joined


def _happens(never: When, fitment: Mapping[str, str]) -> bool:
    return all(fitment.get(feature) in values for feature, values in never.items())


def said(when: When, equipment: Equipment) -> str:
    """Return `when` in words, such as "parking brake: disc brake; axle: wide or narrow"."""
    return in_words(when, equipment.features)


def in_words(when: When, features: Mapping[str, Feature]) -> str:
    """Return `when` in the words of these features; a name that is none of theirs stands as it is written."""
    told = []
    for feature, values in when.items():
        known = features.get(feature)
        words = [known.values.get(value, value) if known else value for value in values]
        told.append(f"{known.name if known else feature}: {joined(words, 'or')}")
    return "; ".join(told)


def told(fitment: Fitment, equipment: Equipment, otherwise: str = "every machine covered") -> str:
    """Return the machines that have these features, in words that follow "for"; `otherwise` when all have them."""
    if not fitment:
        return otherwise
    return f"a machine with {said({feature: (value,) for feature, value in fitment.items()}, equipment)}"
