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
from authoring.model.fluid import Fluid, apart
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.model.space import Cells, Space
from authoring.model.things import Equipment
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved",)


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
        if ways is not None:
            yield from _in_item(item, fluids, moves, ways)


def _shared(equipment: Equipment) -> dict[str, dict[str, Fluid]]:
    """Return the items that hold several fluids, and those fluids by name."""
    held: dict[str, dict[str, Fluid]] = {}
    for name, fluid in equipment.fluids.items():
        if fluid.held_in is not None:
            held.setdefault(fluid.held_in, {})[name] = fluid
    return {item: fluids for item, fluids in held.items() if len(fluids) > 1}


def _in_item(item: str, fluids: Mapping[str, Fluid], moves: Sequence[Act], ways: Ways) -> Iterator[Fault]:
    space = ways.space(moves, (), [fluid.when for fluid in fluids.values()])
    if space is None:
        return
    for mixed, bad in _mixed(moves, fluids, ways, space).items():
        shown = ways.shown(bad, space)
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


def _mixed(moves: Sequence[Act], fluids: Mapping[str, Fluid], ways: Ways, space: Space) -> dict[_Mixed, Cells]:
    """Return what is poured on another kind, and on which machines; on each every pair once, since the mixture stays.

    `inside` is where each fluid may be in, by its name and the place where it was poured.
    """
    inside: dict[tuple[str, Span | None], Cells] = {
        (name, None): space.where(fluid.when) for name, fluid in fluids.items()
    }
    told: dict[frozenset[str], Cells] = {}
    found: dict[_Mixed, Cells] = {}
    for act in moves:
        done = ways.cells(act, space)
        if _empties(act):
            inside = {one: cells & ~done for one, cells in inside.items()}
        for mention in touched(act.action) if act.action.kind.pours else ():
            poured = fluids.get(mention.name) if mention.role == "what" else None
            if poured is None:
                continue
            for (other, before), cells in inside.items():
                pair = frozenset({poured.id, other})
                bad = done & cells & ~told.get(pair, 0) if apart(poured, fluids[other]) else 0
                if bad:
                    mixed = _Mixed(mention.span, poured.id, other, before)
                    found[mixed] = found.get(mixed, 0) | bad
                    told[pair] = told.get(pair, 0) | bad
            inside = {one: cells & ~done if one[0] == poured.id else cells for one, cells in inside.items()}
            inside[poured.id, mention.span] = done
    return found


def _empties(act: Act) -> bool:
    """Tell whether an action lets out for certain what is in."""
    name = act.action.kind.name
    return not act.optional and (name == "drain" or (name == "extract" and "amount" not in act.action.roles))
