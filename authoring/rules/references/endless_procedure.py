"""Procedures carry one another out in a ring.

Who follows them would come back to where they started and never reach an end.
A procedure that is carried out must finish by itself; what both need belongs into a third one.
Nor can one begin whose condition is brought about by a procedure that waits for it in its turn.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Carry out [FL-120].
        do:
          - carry-out: FL-120   #! endless-procedure
```

```yaml other
procedure: FL-120
title: Clean the drop box
equipment: hob
job: Dirt hides a leak.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
  - title: Clean
    steps:
      - step: Carry out [FL-110].
        do:
          - carry-out: FL-110
trial: none
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Carry out [FL-120].
        do:
          - carry-out: FL-120
```

```yaml other
procedure: FL-120
title: Clean the drop box
equipment: hob
job: Dirt hides a leak.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
  - title: Clean
    steps:
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
trial: none
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.calls import calls, waits_for
from authoring.model.library import Library
from authoring.model.mentions import Mention
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R2", "N11")
ABOUT = ("carried-out",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for the shortest ring through each procedure that is the first, by number, of that ring."""
    for follow, message, cure in (
        (calls, "leads back to itself", "Take one of these steps out; put what both procedures need into a third one."),
        (
            waits_for,
            "waits for itself",
            "Let one of these conditions be brought about by another procedure, or by none.",
        ),
    ):
        called = _Called(follow, library)
        for number in sorted(library.procedures):
            ring = _ring(number, called)
            if ring:
                way = " → ".join([number, *(mention.name for mention in ring)])
                related = tuple(Related(mention.span, f"leads on to {mention.name}") for mention in ring[1:])
                yield Fault(f"{number} {message}: {way}.", ring[0].span, cure, related)


class _Called(dict[str, Mapping[str, Mention]]):
    """The first mention of each procedure that a procedure leads on to, worked out when somebody follows it."""

    def __init__(self, follow: Callable[[Procedure, Library], Iterator[Mention]], library: Library) -> None:
        super().__init__()
        self._follow = follow
        self._library = library

    def __missing__(self, number: str) -> Mapping[str, Mention]:
        procedure = self._library.procedures.get(number)
        mentions = list(self._follow(procedure, self._library)) if procedure is not None else []
        self[number] = {mention.name: mention for mention in reversed(mentions)}
        return self[number]


def _ring(start: str, called: Mapping[str, Mapping[str, Mention]]) -> list[Mention]:
    """Return the shortest way from a procedure back to itself through none that comes before it; else nothing."""
    came: dict[str, tuple[str, Mention]] = {}
    waiting = deque([start])
    while waiting:
        number = waiting.popleft()
        for name, mention in called[number].items():
            if name >= start and name not in came:
                came[name] = (number, mention)
                waiting.append(name)
                if name == start:
                    return _way(start, came)
    return []


def _way(start: str, came: Mapping[str, tuple[str, Mention]]) -> list[Mention]:
    """Return the mentions that lead from a procedure back to itself, in order."""
    number, mention = came[start]
    way = [mention]
    while number != start:
        number, mention = came[number]
        way.append(mention)
    return way[::-1]
