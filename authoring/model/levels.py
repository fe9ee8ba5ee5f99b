"""Where the level of a fluid is read, in which windows of temperature, and which part of its circuit is shut then."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from msgspec import Struct

from authoring.diagnostics.diagnostic import Span
from authoring.model.demands import Need
from authoring.model.fitments import may_hold
from authoring.model.fluid import Circuit, Fluid
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.procedure import Action, Procedure, Section, Step
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Equipment, Value, Window
from authoring.quantities.units import Dimension
from authoring.workshop.interval import Interval, interval_of
from authoring.workshop.level_windows import Reading, check_window

READS = frozenset({"fill-to-level", "top-up", "inspect", "measure"})
"""The actions that go by a level."""


class LevelReading(Struct, frozen=True, eq=False):
    """One reading: what the job covers, its step's place, the action, the fluid, the value of its windows, where."""

    covers: When
    place: int
    section: Section
    step: Step
    action: Action
    fluid: Fluid
    value: Value
    span: Span


def readings(procedure: Procedure, library: Library) -> Iterator[LevelReading]:
    """Yield every reading of a level that a job's own steps bind to a temperature, each fluid once for an action."""
    scope = library.scope(procedure)
    if scope.equipment is None or not scope.equipment.fluids:
        return
    for place, (section, step) in enumerate(procedure.steps()):
        for action in step.actions:
            if action.kind.name in READS:
                for fluid, value, span in _bound(action, step, (*step.needs, *section.needs), scope):
                    yield LevelReading(procedure.covers, place, section, step, action, fluid, value, span)


def _bound(action: Action, step: Step, needs: Iterable[Need], scope: Scope) -> Iterator[tuple[Fluid, Value, Span]]:
    """Yield the fluids whose level an action goes by, with the temperature for it: its window, or what is needed."""
    told: set[str] = set()
    if "window" in action.roles:
        value = temperature(action.roles["window"], scope)
        for name in action.what:
            fluid = _fluid(name, scope)
            if fluid is not None and value is not None:
                told.add(name)
                yield fluid, value, action.where.of("window")
    for need in needs:
        fluid, value = _fluid(need.thing, scope), temperature(need.state, scope)
        # A look for leaks at warm oil is none at its level.
        concerned = need.thing in action.what or (action.kind.checkpoint and "level" in step.text.casefold())
        if fluid is not None and value is not None and concerned and need.thing not in told:
            told.add(need.thing)
            yield fluid, value, need.where.of(need.thing)


def _fluid(name: str, scope: Scope) -> Fluid | None:
    named = scope.things.get(name)
    return named.thing if named is not None and isinstance(named.thing, Fluid) else None


def temperature(name: str, scope: Scope) -> Value | None:
    """Return the value of this name if it states temperatures, or None."""
    named = scope.things.get(name)
    value = named.thing if named is not None else None
    return value if isinstance(value, Value) and any(span_of(one) is not None for one in value.windows) else None


def span_of(window: Window) -> Interval | None:
    """Return the temperatures of a window in K; None where its text was refused or it states something else."""
    quantity = window.specification.value
    return interval_of(quantity) if quantity is not None and quantity.dimension is Dimension.TEMPERATURE else None


def spans_on(value: Value, machine: Mapping[str, str]) -> tuple[Interval, ...]:
    """Return the windows of temperature that a machine has, each of which will do; an open one for one refused."""
    found = [span_of(window) for window in value.windows if may_hold(window.when, machine)]
    return tuple(Interval(None, None) if one is None else one for one in found)


def opens(circuit: Circuit) -> Interval | None:
    """Return where the thermostat of a circuit opens, in K, from the first to the last; None for a refused text.

    Of one that opens at a temperature at least, nobody knows where it is open for certain: the upper end is open.
    """
    quantity = circuit.opens.value
    if quantity is None:
        return None
    span = interval_of(quantity)
    return Interval(span.high if span.low is None else span.low, span.high)


def shut(window: Window, circuit: Circuit) -> bool:
    """Tell whether a circuit is open for certain at no temperature of a window.

    Where nobody knows at which it is open for certain, the window is shut when it is below all that may open it.
    """
    span, where = span_of(window), opens(circuit)
    if span is None or where is None:
        return False
    from_there = Interval(where.low, where.low if where.high is None else where.high)
    return check_window(span, Interval(None, None), from_there).reading is Reading.CIRCUIT_SHUT


def open_from(window: Window, circuit: Circuit) -> Fraction | None:
    """Return from which temperature of a window on a circuit is open for certain, in K; None where that is all of it.

    It is None as well where the circuit is `shut` in the whole window, and where nobody knows from where it is open.
    """
    span, where = span_of(window), opens(circuit)
    if span is None or where is None or shut(window, circuit):
        return None
    return where.high if where.high is not None and (span.low is None or span.low < where.high) else None


def closed_by(window: Window, fluid: Fluid, equipment: Equipment) -> Circuit | None:
    """Return the circuit that is why a window is closed to the vehicles it is not for; None where it is not why.

    It is why when it is shut in the window, and every vehicle left out has it.
    """
    circuit = fluid.circuit
    if circuit is None or not window.when or not shut(window, circuit):
        return None
    return circuit if without(equipment, ALWAYS, [ALWAYS], [window.when, circuit.when]) is None else None
