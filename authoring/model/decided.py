"""What a job decides, seen as features: later steps may follow what was chosen and what was fitted."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from msgspec.structs import replace

from authoring.model.applicability import of_procedure
from authoring.model.procedure import Choice, Procedure
from authoring.model.specification import When
from authoring.model.things import Equipment, Feature


def decided_vehicle(equipment: Equipment, procedure: Procedure, words: Callable[[str], str]) -> Equipment:
    """Return the equipment with the options of a procedure, and the choices its conditions name, as features more.

    `words` gives what a reader calls a part. A feature of the equipment keeps its name before an option or a choice.
    """
    asked = {name for one in of_procedure(procedure) for name in one.when}
    choices = [choice for choice in procedure.choices.values() if choice.id in asked]
    if not procedure.options and not choices:
        return equipment
    options = {
        option.id: Feature(option.id, option.name, option.question, option.values, option.where)
        for option in procedure.options.values()
    }
    fitted = {choice.id: _as_feature(choice, words) for choice in choices}
    features = {**fitted, **options, **equipment.features}
    never = tuple(one for choice in choices for one in _impossible(choice, features))
    return replace(equipment, features=features, never=(*equipment.never, *never))


def _as_feature(choice: Choice, words: Callable[[str], str]) -> Feature:
    parts = dict.fromkeys(name for part in choice.parts for name in (part.part, *part.equal))
    return Feature(choice.id, choice.name, choice.question, {part: words(part) for part in parts}, choice.where)


def _impossible(choice: Choice, features: Mapping[str, Feature]) -> Iterator[When]:
    """Yield the pairs of a part and a feature's values for which the choice never gives that part."""
    for part in choice.parts:
        for feature, values in part.when.items():
            known = features.get(feature)
            others = tuple(value for value in known.values if value not in values) if known is not None else ()
            if others:
                yield {choice.id: (part.part, *part.equal), feature: others}
