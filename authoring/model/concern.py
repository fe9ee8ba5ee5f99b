"""Which vehicles a finding concerns, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import islice

from authoring.model.fitments import in_words
from authoring.model.specification import When
from authoring.model.things import Feature

Features = Mapping[str, Feature]

_SHOWN = 4


def concern(features: Features, covers: When, whens: Iterable[When]) -> str:
    """Return the covered vehicles for which all of `whens` hold, outermost first; empty for every vehicle covered.

    A condition that contradicts those around it is told as it stands.
    A name that the features lack is left out, since that is told already; where no features are known all are told.
    """
    asked: dict[str, tuple[str, ...]] = {}
    for when in (covers, *whens):
        for feature, values in when.items():
            if _known(features, feature, values):
                asked[feature] = tuple(value for value in asked.get(feature, values) if value in values) or values
    limited = {feature: values for feature, values in asked.items() if _limits(features, feature, values)}
    if all(set(values) == set(covers.get(feature, ())) for feature, values in limited.items()):
        return ""
    return in_words(limited, features)


def concern_of(groups: Iterable[When], features: Features, covers: When) -> str:
    """Return the words for the covered fitments that meet one of these conditions; of more than four only the first."""
    words = [concern(features, covers, (group,)) for group in islice(groups, _SHOWN + 1)]
    if not all(words):
        return ""
    return ", or ".join([*words[:_SHOWN], *(["others"] if len(words) > _SHOWN else [])])


def _known(features: Features, feature: str, values: Iterable[str]) -> bool:
    return not features or (feature in features and set(values) <= set(features[feature].values))


def _limits(features: Features, feature: str, values: Iterable[str]) -> bool:
    return feature not in features or not set(features[feature].values) <= set(values)
