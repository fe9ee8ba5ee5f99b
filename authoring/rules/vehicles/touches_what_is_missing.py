"""A step touches a thing that some of its vehicles do not have.

An item, a fastener group or a fluid that only some vehicles have says so with `when`.
A step that touches it must be for those vehicles only, or a reader looks for a part that is not there.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  brake-drum: {name: brake drum, when: {brake: drum}}
```
```yaml procedure
sections:
  - title: Strip
    steps:
      - step: Remove the [brake-drum].
        do:
          - remove: brake-drum   #! touches-what-is-missing
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  brake-drum: {name: brake drum, when: {brake: drum}}
```
```yaml procedure
sections:
  - title: Strip
    steps:
      - step: Remove the [brake-drum].
        when: {brake: drum}
        do:
          - remove: brake-drum
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.concern import concern
from authoring.model.fitments import said, together
from authoring.model.fluid import Fluid
from authoring.model.library import Library, Named
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Procedure
from authoring.model.space import possible
from authoring.model.specification import When
from authoring.model.things import Equipment, FastenerGroup, Item
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "V4")
ABOUT = ("condition",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each touched thing that some machine the step is for does not have."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    for section, step in procedure.steps():
        around = together(procedure.covers, section.when, step.when)
        for action in step.actions:
            for mention in touched(action):
                named = scope.things.get(mention.name)
                if named is not None and isinstance(named.thing, Item | FastenerGroup | Fluid):
                    yield from _missing(mention, named, around, scope.vehicle, procedure.covers)


def _missing(mention: Mention, named: Named, around: When, equipment: Equipment, covers: When) -> Iterator[Fault]:
    has = named.thing.when if isinstance(named.thing, Item | FastenerGroup | Fluid) else {}
    if not has or not possible(equipment, together(covers, has)):
        return  # a thing of no covered machine is told elsewhere
    for feature, values in has.items():
        known = equipment.features.get(feature)
        others = tuple(value for value in known.values if value not in values) if known is not None else ()
        if others and possible(equipment, together(around, {feature: others})):
            yield Fault(
                f'"{mention.name}" is there only with {said({feature: values}, equipment)}, '
                f"but this step is also for machines with {said({feature: others}, equipment)}.",
                mention.span,
                f"Add when: {{{feature}: {_written(values)}}} to the step.",
                (Related(named.where.key("when"), "for these only"),),
                concern(equipment.features, covers, (around, {feature: others})),
            )


def _written(values: tuple[str, ...]) -> str:
    return values[0] if len(values) == 1 else f"[{', '.join(values)}]"
