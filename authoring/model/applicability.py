"""Every place where a library says for which fitments something holds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from authoring.diagnostics.diagnostic import Span
from authoring.model.fitments import together
from authoring.model.procedure import Outcome, Procedure, Step
from authoring.model.specification import ALWAYS, When
from authoring.model.stated import stated
from authoring.model.things import Equipment, Shop, Value
from authoring.source.document import Where


class Applicability(Struct, frozen=True):
    """One `when`, `covers` or `never`, and the `when` of the section around it (empty where there is none)."""

    when: When
    where: Where
    keys: tuple[str | int, ...]
    around: When

    @property
    def limited(self) -> Where | None:
        """The object that is there for these fitments only; None where only a result, or nothing, is for them."""
        *above, key = self.keys
        return self.where.child(*above) if key in _LIMITING else None

    @property
    def span(self) -> Span:
        """The stretch of the whole condition."""
        return self.where.of(*self.keys)

    def feature_span(self, feature: str) -> Span:
        """The stretch of the name of one feature."""
        return self.where.key(*self.keys, feature)

    def value_span(self, feature: str, place: int) -> Span:
        """The stretch of one value of a feature, counted from 0."""
        return self.where.of(*self.keys, feature, place)


_WHEN = ("when",)
_LIMITING = frozenset({"when", "covers"})


def of_procedure(procedure: Procedure) -> Iterator[Applicability]:
    """Yield what a procedure says about fitments, in order; `covers` comes first."""
    yield from _some(procedure.covers, procedure.where, ("covers",))
    for message in procedure.safety.values():
        yield from _some(message.when, message.where)
    for condition in procedure.conditions or ():
        yield from _some(condition.when, condition.where)
    for change in procedure.modifications.values():
        yield from _some(change.when, change.where)
    yield from _of_values(procedure.values)
    for choice in procedure.choices.values():
        for part in choice.parts:
            yield from _some(part.when, part.where)
    for section in procedure.sections:
        yield from _some(section.when, section.where)
        for step in section.steps:
            yield from _of_step(step, section.when)
        yield from _of_outcomes(section.noticed, section.when)
    for glance in procedure.while_there:
        yield from _some(glance.when, glance.where)


def _of_step(step: Step, around: When) -> Iterator[Applicability]:
    # A method holds what the step around it says as well; only its own words have a place in it.
    yield from _some(step.when, step.where if stated(step.where, "when") else step.around, around=around)
    within = together(around, step.when)
    for action in step.actions:
        yield from _some(action.critical_when, action.where, ("critical-when",), within)
        yield from _of_outcomes(action.outcomes, within)
    yield from _of_outcomes(step.noticed, within)


def _of_outcomes(outcomes: Iterable[Outcome], around: When) -> Iterator[Applicability]:
    for outcome in outcomes:
        yield from _some(outcome.when, outcome.where, around=around)


def _of_values(values: Mapping[str, Value]) -> Iterator[Applicability]:
    for value in values.values():
        for window in value.windows:
            yield from _some(window.when, window.where)


def of_equipment(equipment: Equipment) -> Iterator[Applicability]:
    """Yield what an equipment file says about fitments: its things first, then what never occurs."""
    for item in equipment.items.values():
        yield from _some(item.when, item.where)
    for group in equipment.fasteners.values():
        yield from _some(group.when, group.where)
    for fluid in equipment.fluids.values():
        yield from _some(fluid.when, fluid.where)
        if fluid.circuit is not None:
            yield from _some(fluid.circuit.when, fluid.circuit.where)
    yield from _of_values(equipment.values)
    for place, never in enumerate(equipment.never):
        yield from _some(never, equipment.where, ("never", place))


def of_shop(shop: Shop) -> Iterator[Applicability]:
    """Yield what the shared safety messages say about fitments."""
    for message in shop.safety.values():
        yield from _some(message.when, message.where)


def _some(
    when: When, where: Where, keys: tuple[str | int, ...] = _WHEN, around: When = ALWAYS
) -> Iterator[Applicability]:
    if when:
        yield Applicability(when, where, keys, around)


def known(when: When, equipment: Equipment) -> bool:
    """Tell whether every feature and value that a condition names is one of the equipment's."""
    return all(
        feature in equipment.features and set(values) <= set(equipment.features[feature].values)
        for feature, values in when.items()
    )
