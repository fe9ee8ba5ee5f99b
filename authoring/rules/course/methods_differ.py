"""Methods that are meant to come to the same do not end alike.

Whoever comes after cannot see which method was taken, and finds a thing off that the next step takes to be on.
Each of the methods under `either` leaves every thing in the same state; what one method brings about by itself,
and what its actions do not say, stands under `leaves` of that method.
Where the two ways go on apart, such as with a clip that was cut or stayed whole, the methods end where they part:
steps after them say with `if-done` and `unless-done` what is kept, and what goes.

Wrong:

```yaml procedure
sections:
  - title: Clean
    steps:
      - either:
          - step: Open the [drop-box] and wipe it out.
            do:
              - open: drop-box
              - clean: drop-box
          - step: Wash the [drop-box] through its filler hole.   #! methods-differ
            do:
              - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Clean
    steps:
      - either:
          - step: Open the [drop-box], wipe it out and close it.
            do:
              - open: drop-box
              - clean: drop-box
              - close: drop-box
          - step: Wash the [drop-box] through its filler hole.
            do:
              - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.course import meet
from authoring.model.ends import End, changing, ends
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure, Section, Step
from authoring.model.specification import When
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L7",)
ABOUT = ("method",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that a method leaves in another state than a method before it."""
    for section in procedure.sections:
        methods: list[Step] = []
        for step in section.steps:
            if step.method is None or step.method.is_first:
                methods = []
            if step.method is not None:
                yield from _against(step, methods, section, procedure, library)
                methods.append(step)


def _against(
    step: Step, earlier: list[Step], section: Section, procedure: Procedure, library: Library
) -> Iterator[Fault]:
    """Yield a fault for what a method leaves otherwise than the first of the earlier ones that may stand for it."""
    around: When = together(procedure.covers, section.when)
    other = next((one for one in earlier if meet(procedure, library, around, one.when, step.when)), None)
    if other is None or _open_ended(step) or _open_ended(other):
        return
    mine, theirs = ends(step.actions, step.leaves), ends(other.actions, other.leaves)
    told: set[str] = set()
    for side in dict.fromkeys((*theirs, *mine)):
        here, there = mine.get(side), theirs.get(side)
        if not _alike(here, there) and side[0] not in told:
            told.add(side[0])
            one, two = _done(other, side[0]), _done(step, side[0])
            if one == two:
                one, two = _by_end(there), _by_end(here)
            yield Fault(
                f'The methods differ in "{side[0]}": the other one {one}, and this one {two}.',
                _place(step),
                "Let both end alike. Take what differs into steps after this one that name the id of a method under "
                '"if-done" or "unless-done".',
                (Related(_place(other), "the other method"),),
            )


def _alike(here: End | None, there: End | None) -> bool:
    """Tell whether two ends are the same; one that is stated as fitted may be tight as well."""
    states = {end.state if end is not None else "" for end in (here, there)}
    stated = any(end is not None and end.action is None for end in (here, there))
    return len(states) == 1 or (stated and states == {"fitted", "tight"})


def _open_ended(step: Step) -> bool:
    return any(action.kind.name == "carry-out" for action in step.actions)


def _done(step: Step, thing: str) -> str:
    """Return what a method does last to a thing, in words that follow "the other one"."""
    stated = [need.state for need in step.leaves if need.thing == thing]
    acts = [action for action in step.actions if thing in action.what and changing(action.kind)]
    return _left(stated[-1]) if stated else _ends_with(acts[-1] if acts else None)


def _by_end(end: End | None) -> str:
    """Return what a method does to the side of a thing in which two methods differ."""
    return _left(end.state) if end is not None and end.action is None else _ends_with(end.action if end else None)


def _left(state: str) -> str:
    return f"leaves it {state.replace('-', ' ')}"


def _ends_with(action: Action | None) -> str:
    if action is None:
        return "does nothing of the kind to it"
    to = f" to {action.details['position']}" if action.kind.name == "set" else ""
    return f'ends with "{action.kind.name}"{to}'


def _place(step: Step) -> Span:
    return step.where.of("step") if step.written else step.where.span
