"""For which fitments a part choice has to give a part, and which parts it gives."""

from __future__ import annotations

from authoring.model.applicability import known
from authoring.model.fitments import concerned, fitments, may_hold, together, too_many
from authoring.model.procedure import Choice, ChoicePart, Procedure
from authoring.model.specification import Specification, When
from authoring.model.things import Equipment
from authoring.quantities.quantity import Quantity


def uses(procedure: Procedure, choice: Choice) -> list[When]:
    """Return for which fitments each step that needs the choice applies."""
    return [
        together(section.when, step.when)
        for section, step in procedure.steps()
        if any(name == choice.id for action in step.actions for _, name in action.names())
    ]


def features_of(procedure: Procedure, choice: Choice) -> set[str]:
    """Return the features that bear on a choice: those its parts name, and those of the steps that need it."""
    whens = [part.when for part in choice.parts] + uses(procedure, choice)
    return {feature for when in whens for feature in when}


def answerable(procedure: Procedure, choice: Choice, equipment: Equipment) -> bool:
    """Tell whether every fitment can be tried: all names are known, and the combinations are not too many."""
    whens = [procedure.covers, *(part.when for part in choice.parts), *uses(procedure, choice)]
    return all(known(when, equipment) for when in whens) and not too_many(
        equipment, procedure.covers, features_of(procedure, choice)
    )


def asked(procedure: Procedure, choice: Choice, equipment: Equipment) -> list[dict[str, str]]:
    """Return the covered fitments that meet the choice, each once, over the features that bear on it.

    A choice that no step needs is taken as needed everywhere.
    """
    features = features_of(procedure, choice)
    needed = uses(procedure, choice) or [{}]
    found: dict[tuple[tuple[str, str], ...], dict[str, str]] = {}
    for fitment in fitments(equipment, procedure.covers, concerned(equipment, features)):
        mine = {feature: value for feature, value in fitment.items() if feature in features}
        if any(may_hold(when, mine) for when in needed):
            found.setdefault(tuple(mine.items()), mine)
    return list(found.values())


def deciding(choice: Choice, part: ChoicePart) -> dict[str, Specification]:
    """Return the sizes that tell a part from the others, by the name of the dimension; a single size has none.

    A size in a dimension that is not stated counts, and where no dimension decides all do: both are told elsewhere.
    """
    habits = {name for name, one in choice.dimensions.items() if not one.decides}
    passed = habits if len(habits) < len(choice.dimensions) else set()
    single = {"": part.stated} if part.stated is not None else {}
    return single | {name: size for name, size in part.sizes.items() if name not in passed}


def decided(choice: Choice, part: ChoicePart) -> bool:
    """Tell whether something tells the part from the others: a feature or a measured size."""
    return bool(part.when or deciding(choice, part))


def comparable(one: Quantity, other: Quantity) -> bool:
    """Tell whether two sizes measure the same kind of thing."""
    return one.dimension is other.dimension
