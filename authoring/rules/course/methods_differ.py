"""Methods that are meant to come to the same do not end alike.

Whoever comes after cannot see which method was taken, and finds a thing off that the next step takes to be on.
Each of the methods under `either` leaves every thing in the same state; what one method brings about by itself,
and what its actions do not say, stands under `leaves` of that method.

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
from authoring.model.ends import End, ends
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section, Step
from authoring.model.things import When
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L7",)

_WORDS = {"removed": "off", "fitted": "on", "started": "screwed in by hand", "tried": "put together for a look"}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that a method leaves in another state than a method before it."""
    for section in procedure.sections:
        methods: list[Step] = []
        for step in section.steps:
            if step.method is None or step.method.letter == "a":
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
    for side in dict.fromkeys((*theirs, *mine)):
        here, there = mine.get(side), theirs.get(side)
        if not _alike(here, there):
            yield Fault(
                f'The methods differ: the first leaves "{side[0]}" {_left(there)}, and this one {_left(here)}.',
                _place(step),
                "Let both end alike, or make two steps of them that say when each is done.",
                (Related(_place(other), "the other method"),),
            )


def _alike(here: End | None, there: End | None) -> bool:
    """Tell whether two ends are the same; one that is stated as fitted may be tight as well."""
    states = {end.state if end is not None else "" for end in (here, there)}
    stated = any(end is not None and end.action is None for end in (here, there))
    return len(states) == 1 or (stated and states == {"fitted", "tight"})


def _open_ended(step: Step) -> bool:
    return any(action.kind.name == "carry-out" for action in step.actions)


def _left(end: End | None) -> str:
    return "as it was" if end is None else _WORDS.get(end.state, end.state.replace("-", " "))


def _place(step: Step) -> Span:
    return step.where.of("step") if step.written else step.where.span
