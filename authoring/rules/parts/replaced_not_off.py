"""A part takes the place of an old thing that is still on.

Whoever reads that the new band takes the place of the old one looks for the step that took the old one off.
What stands under `replaces` of a fit has come off before, for the same machines and on the same way through the job:
it was removed, disconnected or discarded, or a larger thing that it is part of was, or the procedure needs it removed.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  old-ring: {name: old ring}
```
```yaml procedure
sections:
  - title: Fit the ring
    steps:
      - step: Fit a new [plug-ring].
        do:
          - fit: {what: plug-ring, replaces: old-ring}   #! replaced-not-off
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  old-ring: {name: old ring}
```
```yaml procedure
sections:
  - title: Fit the ring
    steps:
      - step: Remove the [old-ring].
        do:
          - remove: old-ring
      - step: Fit a new [plug-ring].
        do:
          - fit: {what: plug-ring, replaces: old-ring}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import Act, acts
from authoring.model.library import Library
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF, wholes
from authoring.model.procedure import Procedure
from authoring.model.runs import last_done
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

# An old thing may come off with another one that the steps name.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1", "P2")
ABOUT = ("replaced",)

_OFF = TAKES_OFF | {"discard"}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each fitting in the place of a thing that some machine has still on."""
    ways = ways_of(procedure, library)
    if ways is None:
        return
    scope = library.scope(procedure)
    course = acts(procedure, library)
    for place, act in enumerate(course):
        old = act.action.roles.get("replaces") if act.own else None
        if old is not None and old in scope.things:
            names = set(wholes(old, scope.things))
            if not any(need.thing in names and need.state == "removed" for need in procedure.needs):
                yield from _of_fit(act, old, [one for one in course[:place] if _moves(one, names)], ways)


def _moves(act: Act, names: set[str]) -> bool:
    return act.action.kind.name in _OFF | PUTS_ON and not names.isdisjoint(act.action.what)


def _of_fit(act: Act, old: str, before: Sequence[Act], ways: Ways) -> Iterator[Fault]:
    space = ways.space([act, *before])
    if space is None:
        return
    bad, fitted = 0, ways.cells(act, space)
    for last, cells in last_done(ways.marked(before, space), fitted):
        if last is None or last.action.kind.name not in _OFF:
            bad |= cells
    if bad:
        shown = ways.shown(bad, space, fitted)
        yield Fault(
            f'This takes the place of "{old}", which has not come off before{shown.whom}.',
            act.action.where.of("replaces"),
            f'Add a step before this one that removes "{old}", or leave "replaces" out.',
            fitments=shown.fitments,
        )
