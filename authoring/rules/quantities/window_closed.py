"""A value has no window for some machine that needs it.

The step says "until the oil has reached its temperature", and for this machine none is stated.
A value with several windows has one for every machine that meets a step in which the value stands; the message names
the fewest features that show the gap.

Wrong:

```yaml procedure
values:
  soak:
    name: settling time
    windows:   #! window-closed
      - {value: 5 min, source: plate, at: line 7, when: {brake: drum}, otherwise: The disc stirs the oil.}
sections:
  - title: Work
    steps:
      - step: Wait [soak].
        do:
          - wait: soak
```

Right:

```yaml procedure
values:
  soak:
    name: settling time
    windows:
      - {value: 5 min, source: plate, at: line 7, when: {brake: drum}, otherwise: The disc stirs the oil.}
      - {value: 9 min, source: plate, at: line 8}
sections:
  - title: Work
    steps:
      - step: Wait [soak].
        do:
          - wait: soak
```
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.brackets import brackets
from authoring.model.demands import Need
from authoring.model.fitments import together
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.mentions import of_step
from authoring.model.procedure import Procedure
from authoring.model.specification import ALWAYS, When
from authoring.model.texts import prose_of_step
from authoring.model.things import Value
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "H2")
ABOUT = ("window-for-some",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each value that a step needs and of which some machine has no window."""
    scope = library.scope(procedure)
    limited = {name: value for name, value in _values(scope) if all(window.when for window in value.windows)}
    needed: dict[str, list[When]] = {}
    for name, when in _needs(procedure) if limited else ():
        if name in limited:
            needed.setdefault(name, []).append(when)
    for name, whens in needed.items():
        yield from _closed(limited[name], whens, scope)


def _values(scope: Scope) -> Iterator[tuple[str, Value]]:
    for name, named in scope.things.items():
        if isinstance(named.thing, Value):
            yield name, named.thing


def _needs(procedure: Procedure) -> Iterator[tuple[str, When]]:
    """Yield each name that a machine meets, in data and in texts, and for which fitments."""
    yield from _states(procedure.needs, ALWAYS)
    for section, step in procedure.steps():
        yield from _states(section.needs, section.when)
        when = together(section.when, step.when)
        yield from ((mention.name, when) for mention in of_step(step))
        for prose in prose_of_step(step):
            yield from ((bracket.name, when) for bracket in brackets(prose.text))


def _states(needs: Iterable[Need], when: When) -> Iterator[tuple[str, When]]:
    for need in needs:
        yield need.state, when


def _closed(value: Value, needed: list[When], scope: Scope) -> Iterator[Fault]:
    if scope.vehicle is None:
        return
    windows = [window.when for window in value.windows]
    lack = without(scope.vehicle, scope.procedure.covers, needed, windows)
    if lack is not None:
        yield Fault(
            f'"{value.id}" is needed in {scope.procedure.number}, but has no window{lack.whom}.',
            value.where.key("windows"),
            "Add a window for it, or say with when that the step is not for such machines.",
            (Related(scope.procedure.where.of("procedure"), "needed in this procedure"),),
            lack.fitments,
        )
