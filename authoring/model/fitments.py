"""For which fitments something applies, and how that is said."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping

from authoring.model.things import Equipment, When


def may_hold(when: When, selection: Mapping[str, str]) -> bool:
    """Tell whether `when` can hold once the features in `selection` have their values; others are open."""
    return all(selection[feature] in values for feature, values in when.items() if feature in selection)


def covered(equipment: Equipment, covers: When) -> dict[str, tuple[str, ...]]:
    """Return, for each feature of the equipment, the values a procedure covers."""
    return {
        feature.id: tuple(value for value in feature.values if value in covers.get(feature.id, tuple(feature.values)))
        for feature in equipment.features.values()
    }


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


def _happens(never: When, fitment: Mapping[str, str]) -> bool:
    return all(fitment.get(feature) in values for feature, values in never.items())


def applies(when: When, selection: Mapping[str, str], equipment: Equipment) -> str:
    """Return the line that says for which vehicles something applies; empty when that is settled or for all."""
    open_features = {feature: values for feature, values in when.items() if feature not in selection}
    return said(open_features, equipment)


def said(when: When, equipment: Equipment) -> str:
    """Return `when` in words, such as "parking brake: disc brake; axle: wide or narrow"."""
    told = []
    for feature, values in when.items():
        known = equipment.features.get(feature)
        words = [known.values.get(value, value) if known else value for value in values]
        told.append(f"{known.name if known else feature}: {_either(words)}")
    return "; ".join(told)


def _either(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"
