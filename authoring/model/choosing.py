"""For which fitments a part choice has to give a part, and which parts it gives."""

from __future__ import annotations

from fractions import Fraction

from authoring.model.applicability import known
from authoring.model.fitments import concerned, fitments, may_hold, together, too_many
from authoring.model.procedure import Choice, ChoicePart, Procedure
from authoring.model.stated import stated
from authoring.model.things import Equipment, When
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


def decided(part: ChoicePart) -> bool:
    """Tell whether something tells the part from the others: a feature or a measured size."""
    return bool(part.when) or stated(part.where, "size")


def comparable(one: Quantity, other: Quantity) -> bool:
    """Tell whether two sizes measure the same kind of thing."""
    return one.dimension is other.dimension


def both_fit(one: Quantity, other: Quantity) -> bool:
    """Tell whether some measured size agrees with both; two that only touch do as well."""
    (low, high), (other_low, other_high) = _window(one), _window(other)
    return not (_below(high, other_low) or _below(other_high, low))


def _below(high: Fraction | None, low: Fraction | None) -> bool:
    return high is not None and low is not None and high < low


def _window(size: Quantity) -> tuple[Fraction | None, Fraction | None]:
    """Return the lowest and the highest size in the dimension's base unit; None where there is no limit."""
    numbers = (size.nominal, size.nominal) if size.low is None and size.high is None else (size.low, size.high)
    low, high = (None if one is None else one * size.unit.factor + size.unit.offset for one in numbers)
    return low, high
