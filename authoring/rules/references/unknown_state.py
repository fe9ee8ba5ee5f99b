"""A state is asked for that the thing cannot be in.

A state that nobody knows is never reached, so a step that needs it waits for nothing, and nobody says so.
Under `needs` and `leaves` stands one of the language's states, such as stopped or removed, a position of the item,
or the name of the value it must lie in; `set` takes a position that the item has.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: lever, positions: {low: low range, neutral: neutral}}
```
```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Set the [lever] to neutral.
        do:
          - set: {what: lever, position: neutrl}   #! unknown-state
      - step: Wipe the [drop-box] dry with a [rag].
        needs: {lever: nutral, drop-box: stoped}   #! unknown-state unknown-state
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: lever, positions: {low: low range, neutral: neutral}}
```
```yaml procedure
values:
  cool: {name: temperature to touch, value: at most 40 °C, source: bench-book, at: page 8}
sections:
  - title: Wipe
    steps:
      - step: Set the [lever] to neutral.
        do:
          - set: {what: lever, position: neutral}
      - step: Wipe the [drop-box] dry with a [rag].
        needs: {lever: neutral, drop-box: cool}
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.diagnostics.words import joined
from authoring.model.action_kind import Kind
from authoring.model.demands import Need
from authoring.model.language.states import STATES
from authoring.model.library import Library, Scope
from authoring.model.procedure import Action, Procedure
from authoring.model.things import Item
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "R1", "N11")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each state that its thing cannot be in, and for each position that an item does not have."""
    if library.partial:
        return  # the position or the value may well stand in the file that could not be read
    scope = library.scope(procedure)
    for need in _needs(procedure):
        yield from _unknown(need, scope)
    for _, step in procedure.steps():
        for action in step.actions:
            if "position" in action.details:
                yield from _set(action, scope)


def _needs(procedure: Procedure) -> Iterator[Need]:
    yield from (*procedure.needs, *procedure.leaves)
    for section in procedure.sections:
        yield from section.needs
        for step in section.steps:
            yield from (*step.needs, *step.leaves)


def _unknown(need: Need, scope: Scope) -> Iterator[Fault]:
    named = scope.things.get(need.thing)
    if named is None or need.state in STATES:
        return  # an unknown thing is told elsewhere
    positions = named.thing.positions if isinstance(named.thing, Item) else {}
    value = scope.things.get(need.state)
    if need.state in positions or (value is not None and value.kind is Kind.VALUE):
        return
    values = [name for name, one in scope.things.items() if one.kind is Kind.VALUE]
    cure = did_you_mean(need.state, [*positions, *STATES, *values])
    if not cure:
        known = f"a position ({joined(list(positions), 'or')}), " if positions else ""
        cure = f"Write {known}a state such as stopped, or the name of the value it must lie in."
    yield Fault(
        f'"{need.thing}" cannot be in the state "{need.state}", which is none that is known.',
        need.where.of(need.thing),
        cure,
        (Related(named.where.span, f'"{need.thing}" is stated here'),),
    )


def _set(action: Action, scope: Scope) -> Iterator[Fault]:
    position = action.details["position"]
    for name in action.what:
        named = scope.things.get(name)
        if named is None or not isinstance(named.thing, Item) or position in named.thing.positions:
            continue  # what is no item is told elsewhere
        positions = named.thing.positions
        has = f'no position "{position}"' if positions else "no positions"
        cure = did_you_mean(position, positions) or (
            f"Its positions are {joined(list(positions))}."
            if positions
            else "State its positions in the equipment file, such as positions: {up: pulled up, down: pushed down}."
        )
        yield Fault(
            f'The item "{name}" has {has}.',
            action.where.of("position"),
            cure,
            (Related(named.where.span, f'"{name}" is stated here'),),
        )
