"""For which fitments a part choice has to give a part, and which parts it gives."""

from __future__ import annotations

from authoring.model.fitments import together
from authoring.model.lacking import laid_out
from authoring.model.procedure import Choice, ChoicePart, Procedure
from authoring.model.space import Cells, Space
from authoring.model.specification import ALWAYS, Specification, When
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


def asked(procedure: Procedure, choice: Choice, equipment: Equipment) -> tuple[Space, Cells] | None:
    """Return the covered fitments that meet the choice, in a space over the features that bear on it.

    A choice that no step needs is taken as needed everywhere.
    It is None where nothing can be said: a name is unknown or the combinations are too many, both told elsewhere.
    """
    needed = uses(procedure, choice)
    space = laid_out(equipment, procedure.covers, [*(part.when for part in choice.parts), *needed])
    return (space, space.either(needed or [ALWAYS])) if space is not None else None


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
