"""The smallest set of features that shows a fault: what a reader has to know, and no more."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Mapping, Sequence

from authoring.model.fitments import said
from authoring.model.things import Equipment

Fitment = Mapping[str, str]

# Sets of up to so many features are all tried; larger ones are found by leaving features out one by one.
_TRIED = 3


def smallest(bad: Sequence[Fitment], good: Collection[Fitment]) -> Fitment:
    """Return the fewest features and values that some bad fitment has and no good one.

    All fitments name the same features; `bad` has at least one, and none is both bad and good.
    """
    features = list(bad[0])
    for size in range(min(_TRIED, len(features)) + 1):
        for picked in itertools.combinations(features, size):
            fine = {tuple(one[feature] for feature in picked) for one in good}
            for one in bad:
                values = tuple(one[feature] for feature in picked)
                if values not in fine:
                    return dict(zip(picked, values, strict=True))
    return _leaving_out(bad[0], good)


def _leaving_out(one: Fitment, good: Collection[Fitment]) -> Fitment:
    left = dict(one)
    for feature in one:
        fewer = {name: value for name, value in left.items() if name != feature}
        if not any(all(other[name] == value for name, value in fewer.items()) for other in good):
            left = fewer
    return left


def told(fitment: Fitment, equipment: Equipment, otherwise: str = "every machine covered") -> str:
    """Return the machines that have these features, in words that follow "for"; `otherwise` when all have them."""
    if not fitment:
        return otherwise
    return f"a machine with {said({feature: (value,) for feature, value in fitment.items()}, equipment)}"
