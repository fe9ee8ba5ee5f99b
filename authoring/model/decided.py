"""What a job decides, seen as features: later steps may follow what was chosen and what was fitted."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from msgspec.structs import replace

from authoring.model.applicability import of_procedure
from authoring.model.fitments import together
from authoring.model.procedure import Choice, Procedure
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Equipment, Feature

MOST_OTHERS = 256
"""How many conditions say where a part is not given; of a part in rows of more nothing is barred, so none is wrong."""


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
    """Yield what parts and values of features the choice never brings together.

    A part may stand in several rows, and as well as another in some: it is given where one of them is met.
    """
    rows: dict[str, tuple[int, ...]] = {}
    for place, part in enumerate(choice.parts):
        for name in (part.part, *part.equal):
            rows[name] = (*rows.get(name, ()), place)
    alike: dict[tuple[int, ...], tuple[str, ...]] = {}
    for name, places in rows.items():
        alike[places] = (*alike.get(places, ()), name)
    others = {name: feature for name, feature in features.items() if name != choice.id}
    for places, names in alike.items():
        for when in _where_none_holds([choice.parts[place].when for place in places], others):
            yield {choice.id: names, **when}


def _where_none_holds(whens: Iterable[When], features: Mapping[str, Feature]) -> list[When]:
    """Return conditions of which one holds just where none of `whens` does; none where they are more than MOST_OTHERS.

    A feature that is not known bars nothing, since that is told already.
    """
    found: list[When] = [ALWAYS]
    for when in whens:
        joined = [together(one, other) for one in found for other in _contrary(when, features)]
        found = list({tuple(sorted(one.items())): one for one in joined if all(one.values())}.values())
        if len(found) > MOST_OTHERS:
            return []
    return found


def _contrary(when: When, features: Mapping[str, Feature]) -> Iterator[When]:
    for name, values in when.items():
        left = tuple(value for value in features[name].values if value not in values) if name in features else ()
        if left:
            yield {name: left}
