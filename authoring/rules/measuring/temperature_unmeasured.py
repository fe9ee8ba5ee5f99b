"""Something must be at a temperature, and nobody brings it there or measures it.

A hand cannot tell 35 °C from 45 °C, and a level that is read too cold or too warm is read wrongly.
Where a step or section needs a thing at a temperature, or fills to a level in a window of temperature, something comes
before: the thing is heated to it, an engine runs until it is there, or the thing is measured.
A measurement of the item that holds a fluid will do for the fluid, and one of a part for what it is part of.
A thermometer among the tools of the step will do as well, and so will a wait whose length follows from how the item
cools.
What only some machines do, or what may be left out, does not count for the others.

Wrong:

```yaml procedure
values:
  oil-warm: {name: temperature for the level, value: 35 to 45 °C, source: bench-book, at: page 8}
sections:
  - title: Read the level
    steps:
      - step: Look at the level of the [box-oil].
        needs: {box-oil: oil-warm}   #! temperature-unmeasured
        do:
          - inspect:
              what: box-oil
              outcomes:
                - {found: The oil stands at the lower edge of the hole., then: go-on}
                - {found: The oil stands lower., then: put-right, say: Top up until oil runs out.}
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
```

```yaml procedure
values:
  oil-warm: {name: temperature for the level, value: 35 to 45 °C, source: bench-book, at: page 8}
sections:
  - title: Read the level
    steps:
      - step: Run the [engine] until the oil has reached [oil-warm].
        do:
          - run: {what: engine, until: oil-warm}
      - step: Stop the [engine].
        do:
          - stop: engine
      - step: Look at the level of the [box-oil].
        needs: {box-oil: oil-warm}
        do:
          - inspect:
              what: box-oil
              outcomes:
                - {found: The oil stands at the lower edge of the hole., then: go-on}
                - {found: The oil stands lower., then: put-right, say: Top up until oil runs out.}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Severity, Span
from authoring.model.cooling import coolings
from authoring.model.course import Act, acts
from authoring.model.demands import Need
from authoring.model.fitments import together
from authoring.model.fluid import Fluid
from authoring.model.lacking import without
from authoring.model.levels import temperature
from authoring.model.library import Library, Scope
from authoring.model.procedure import Procedure, Step
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item, Tool, Value
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.cooling import Estimate
from authoring.workshop.interval import interval_of, overlap

SEVERITY = Severity.WARNING
REQUIREMENTS = ("V3", "R3")
ABOUT = ("value-needed",)

_BRINGS = {"heat": "to", "run": "until", "measure": "value"}


class _Asked(Struct, frozen=True, eq=False):
    """A thing that must be at a temperature: where it says so, for which fitments, the step, and the acts before."""

    thing: str
    value: Value
    span: Span
    when: When
    step: Step
    before: Sequence[Act]


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing and temperature of which some machine comes there without a measurement."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    told: set[tuple[str, str]] = set()
    for asked in _asked(procedure, library, scope):
        if (asked.thing, asked.value.id) in told or _has_thermometer(asked.step, scope):
            continue
        kin = _kin(asked.thing, scope)
        given = [act.when for act in asked.before if _tells(act, asked, kin, scope)]
        lack = without(scope.vehicle, procedure.covers, [asked.when], given)
        if lack is not None:
            told.add((asked.thing, asked.value.id))
            yield Fault(
                f'"{asked.thing}" must be at "{asked.value.id}" here, '
                f"and no step before brings it there or measures it{lack.whom}.",
                asked.span,
                "Let a step before measure it with a thermometer, or run or heat until the value is reached.",
                fitments=lack.fitments,
            )


def _asked(procedure: Procedure, library: Library, scope: Scope) -> Iterator[_Asked]:
    course = acts(procedure, library)
    waited = _waited(procedure, scope)
    place = 0
    for section in procedure.sections:
        for step in section.steps:
            when = together(section.when, step.when)
            before = [act for act in course if act.place < place]
            needs = [(need, section.when) for need in section.needs if step is section.steps[0]]
            for need, holds in [*needs, *((need, when) for need in step.needs)]:
                value = temperature(need.state, scope)
                if value is not None and need not in waited:
                    yield _Asked(need.thing, value, need.where.of(need.thing), holds, step, before)
            for act in course:
                if act.place == place and act.own:
                    yield from _windows(act, when, before, scope)
                    before = [*before, act]
            place += 1


def _windows(act: Act, when: When, before: Sequence[Act], scope: Scope) -> Iterator[_Asked]:
    value = temperature(act.action.roles.get("window", ""), scope)
    if value is not None:
        span = act.action.where.of("window")
        yield from (_Asked(thing, value, span, when, act.doing, before) for thing in act.action.what)


def _waited(procedure: Procedure, scope: Scope) -> set[Need]:
    """Return the needs before which the steps wait for what is known to cool; too short a wait is told apart."""
    found = coolings(procedure, scope, lambda _: True)
    return {one.need for one in found if one.waits and isinstance(one.estimate, Estimate)}


def _has_thermometer(step: Step, scope: Scope) -> bool:
    tools = (scope.things[name].thing for name in step.uses if name in scope.things)
    return any(_is_thermometer(tool) for tool in tools if isinstance(tool, Tool))


def _is_thermometer(tool: Tool) -> bool:
    reach = tool.range.value if tool.range is not None else None
    return any(one is not None and one.dimension is Dimension.TEMPERATURE for one in (reach, tool.resolution))


def _kin(thing: str, scope: Scope) -> frozenset[str]:
    """Return the names of what is as warm as a thing: what holds it, what it is part of, and what is part of it."""
    named = scope.things.get(thing)
    known = named.thing if named is not None else None
    above = {thing}
    if isinstance(known, Fluid):
        above |= {known.held_in or thing}
    elif isinstance(known, FastenerGroup):
        above |= {known.on or thing}
    items = scope.equipment.items.values() if scope.equipment is not None else ()
    above |= {item.part_of for item in items if item.id in above and item.part_of is not None}
    below = {item.id for item in items if item.part_of in above}
    held = {fluid.id for fluid in _fluids(scope).values() if isinstance(known, Item) and fluid.held_in == thing}
    return frozenset(above | below | held)


def _fluids(scope: Scope) -> Mapping[str, Fluid]:
    return scope.equipment.fluids if scope.equipment is not None else {}


def _tells(act: Act, asked: _Asked, kin: frozenset[str], scope: Scope) -> bool:
    """Tell whether an action brings one of these things to a temperature of the value's, or measures it."""
    name = act.action.kind.name
    if name not in _BRINGS or act.doing.optional is not None or act.section.optional is not None:
        return False
    stated = temperature(act.action.roles.get(_BRINGS[name], ""), scope)
    if name == "measure":
        measures = stated is not None or ("value" not in act.action.roles and _has_thermometer(act.doing, scope))
        return measures and bool(kin & set(act.action.what))
    # Whether a fluid is brought to the right temperature for its level is told apart.
    reaches = stated is not None and (asked.thing in _fluids(scope) or _meet(stated, asked.value))
    return reaches and (name == "run" or bool(kin & set(act.action.what)))


def _meet(one: Value, other: Value) -> bool:
    """Tell whether some window of one value and some window of the other have a temperature in common."""
    windows = [
        [interval_of(window.specification.value) for window in value.windows if window.specification.value is not None]
        for value in (one, other)
    ]
    return any(overlap(first, second) is not None for first in windows[0] for second in windows[1])
