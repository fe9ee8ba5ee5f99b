"""What was put together for a trial is not taken apart again.

A trial fit leaves something out, such as the seal, or is not tightened; taken for the real one it leaks or falls off.
What was tried comes off again, or is discarded, before it is fitted for good and before the job ends.

Wrong:

```yaml procedure
sections:
  - title: Try
    steps:
      - step: Try the [drop-box] without the [plug-ring].
        do:
          - trial-fit: {what: drop-box, without: plug-ring}   #! trial-fit-kept
      - step: Fit the [drop-box].
        do:
          - fit: drop-box
```

Right:

```yaml procedure
sections:
  - title: Try
    steps:
      - step: Try the [drop-box] without the [plug-ring].
        do:
          - trial-fit: {what: drop-box, without: plug-ring}
      - step: Remove the [drop-box] again.
        do:
          - remove: drop-box
      - step: Fit the [drop-box].
        do:
          - fit: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Act, acts
from authoring.model.lacking import lack, laid_out
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N1", "N4")
ABOUT = ("trial-fit",)

_APART = frozenset({"remove", "disconnect", "discard"})
_FOR_GOOD = frozenset({"fit", "seat", "connect", "hold", "start", "tighten"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that some machine keeps as it was tried."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    course = acts(procedure, library)
    for place, act in enumerate(course):
        if act.own and act.action.kind.name == "trial-fit":
            for thing in act.action.what:
                yield from _kept(thing, act, course[place + 1 :], procedure, vehicle)


def _kept(thing: str, act: Act, later: Sequence[Act], procedure: Procedure, vehicle: Equipment) -> Iterator[Fault]:
    rest = [one for one in later if one.action.kind.name in _APART | _FOR_GOOD and thing in one.action.what]
    space = laid_out(vehicle, procedure.covers, [act.when, *(one.when for one in rest)])
    if space is None:
        return
    bad = open_still = space.where(act.when)
    first: Act | None = None
    for one in rest:
        follows = space.where(one.when) & open_still
        open_still &= ~follows
        if one.action.kind.name in _APART:
            bad &= ~follows
        elif follows:
            first = first or one
    if bad:
        left = lack(space, bad)
        before = "before it is fitted for good" if first is not None else "afterwards"
        yield Fault(
            f'"{thing}" is only tried here, and is not taken apart again {before}{left.whom}.',
            act.action.where.span,
            f"Add a step that removes {thing} after the trial.",
            (Related(first.action.where.span, "fitted for good here"),) if first is not None else (),
            left.fitments,
        )
