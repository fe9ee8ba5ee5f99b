"""A fluid is poured on another kind that was not drained before.

Two kinds in one box foam, eat its seals or drop what keeps its gears apart, and nobody sees it in the hole.
Two fluids that the equipment holds `in` the same item and of which the `kind` differs are kept apart: one is drained
before the other is poured, on every machine that may have it; topping up is pouring.
A machine may have each fluid that its features allow, until the item is drained, and then what was poured.
`mixes-with` says that two fluids may come together.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, in: drop-box}
  frost-oil: {name: frost oil, kind: thin gear oil of our grade 1, in: drop-box}
```

```yaml procedure
values:
  first-fill: {name: first fill, value: 0.4 L, source: bench-book, at: page 9}
sections:
  - title: Fill
    steps:
      - step: Pour in [first-fill] of [frost-oil].
        do:
          - fill: {what: frost-oil, amount: first-fill}   #! fluids-mixed
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, in: drop-box, disposal: used-oil tank}
  frost-oil: {name: frost oil, kind: thin gear oil of our grade 1, in: drop-box}
```

```yaml procedure
values:
  first-fill: {name: first fill, value: 0.4 L, source: bench-book, at: page 9}
sections:
  - title: Fill
    steps:
      - step: Drain the [box-oil].
        do:
          - drain: box-oil
      - step: Pour in [first-fill] of [frost-oil].
        do:
          - fill: {what: frost-oil, amount: first-fill}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.contents import MOVES
from authoring.model.course import Act, acts
from authoring.model.fitments import may_hold
from authoring.model.fluid import Fluid, apart
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.model.smallest import Fitment
from authoring.model.things import Equipment
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6",)


class _Mixed(Struct, frozen=True):
    """A pouring of one fluid on another, and where the other was poured in this job; None where it was found in it."""

    span: Span
    poured: str
    other: str
    before: Span | None


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each pouring on another kind of fluid that some machine may have in the same item."""
    equipment = library.scope(procedure).equipment
    for item, fluids in (_shared(equipment) if equipment is not None else {}).items():
        course = acts(procedure, library)
        moves = [act for act in course if act.action.kind.name in MOVES and set(act.action.what) & set(fluids)]
        ways = ways_of(procedure, library) if any(act.action.kind.pours for act in moves) else None
        if ways is not None and not ways.unseen & set(fluids):
            yield from _in_item(item, fluids, moves, ways)


def _shared(equipment: Equipment) -> dict[str, dict[str, Fluid]]:
    """Return the items that hold several fluids, and those fluids by name."""
    held: dict[str, dict[str, Fluid]] = {}
    for name, fluid in equipment.fluids.items():
        if fluid.held_in is not None:
            held.setdefault(fluid.held_in, {})[name] = fluid
    return {item: fluids for item, fluids in held.items() if len(fluids) > 1}


def _in_item(item: str, fluids: Mapping[str, Fluid], moves: Sequence[Act], ways: Ways) -> Iterator[Fault]:
    machines = ways.machines(moves, (), [fluid.when for fluid in fluids.values()])
    found: dict[_Mixed, list[Fitment]] = {}
    for machine in machines:
        done = [act for act in moves if ways.happens(act, machine)]
        for one in _on(machine, done, fluids):
            found.setdefault(one, []).append(machine)
    for mixed, bad in found.items():
        shown = ways.shown(bad, [machine for machine in machines if machine not in bad])
        other = fluids[mixed.other]
        poured = (Related(mixed.before, "poured here"),) if mixed.before is not None else ()
        where = f'is in "{item}" already' if mixed.before is not None else f'may be in "{item}"'
        yield Fault(
            f'"{mixed.poured}" is poured, and "{mixed.other}", which is another kind, {where}{shown.whom}.',
            mixed.span,
            f'Drain "{mixed.other}" before, or say with mixes-with that the two may come together.',
            (*poured, Related(other.where.of("kind"), "the other kind")),
            shown.fitments,
        )


def _on(machine: Fitment, done: Sequence[Act], fluids: Mapping[str, Fluid]) -> Iterator[_Mixed]:
    """Yield what is poured on another kind on one machine; each pair once, since the mixture stays."""
    inside: dict[str, Span | None] = {name: None for name, one in fluids.items() if may_hold(one.when, machine)}
    told: set[tuple[str, str]] = set()
    for act in done:
        name = act.action.kind.name
        skipped = any(one.optional is not None for one in (act.step, act.doing, act.section))
        if not skipped and (name == "drain" or (name == "extract" and "amount" not in act.action.roles)):
            inside = {}
        for mention in touched(act.action) if act.action.kind.pours else ():
            poured = fluids.get(mention.name) if mention.role == "what" else None
            if poured is None:
                continue
            for other, before in inside.items():
                if (poured.id, other) not in told and apart(poured, fluids[other]):
                    told |= {(poured.id, other), (other, poured.id)}
                    yield _Mixed(mention.span, poured.id, other, before)
            inside = {**inside, poured.id: mention.span}
