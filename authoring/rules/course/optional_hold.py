"""A step that may be skipped is needed all the same.

Who skips it, as the page allows, goes past a hold point, or leaves off what an earlier step took off.
A step or section with `optional` holds no hold point, unless that is about its own work,
and puts nothing back, or tight, that a step which must be done took off or loosened for the same machines.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Loosen the [level-plug].
        do:
          - loosen: level-plug
      - step: Tighten the [level-plug].
        optional: Worth doing where it is loose.
        do:
          - tighten: level-plug   #! optional-hold
      - step: Look at the [drop-box].
        optional: Worth doing where oil drips.
        why: Oil on the floor is slippery.
        do:
          - inspect:
              what: drop-box
              hold: true   #! optional-hold
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: stop}
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        optional: Worth doing where oil drips.
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Act, acts, meet
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault
from authoring.source.document import Path

# What a hold point is about may hang together with the work that is skipped with it in ways that no name tells.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1", "N8")
ABOUT = ("optional",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each hold point that may be skipped, and for each skipped action that something waits for."""
    if not any(section.optional or step.optional for section, step in procedure.steps()):
        return
    course = acts(procedure, library)
    for place, act in enumerate(course):
        skipped = _skipped(act)
        if not act.own or skipped is None:
            continue
        if act.action.hold and not _own_work(act, skipped, course[:place], procedure, library):
            yield Fault(
                "This is a hold point, but its step may be skipped.",
                act.action.where.of("hold"),
                'Take "optional" out, or let it be a checkpoint without "hold".',
            )
        for thing in act.action.what if act.action.kind.undoes else ():
            taken = _taken_off(thing, act, course, place)
            if taken is not None and meet(procedure, library, act.when, taken.when):
                yield Fault(
                    f'This step may be skipped, and then nothing undoes "{taken.action.kind.name}" of "{thing}".',
                    act.action.where.span,
                    'Take "optional" out, or make both steps optional together.',
                    (Related(taken.action.where.span, "done here, and not skipped"),),
                )


def _skipped(act: Act) -> Path | None:
    """Return the place of what may be skipped around an action, or None where it must be done."""
    if act.section.optional is not None:
        return act.section.where.path
    return act.step.where.path if act.step.optional is not None else None


def _own_work(act: Act, skipped: Path, before: Sequence[Act], procedure: Procedure, library: Library) -> bool:
    """Tell whether what is checked was worked on, for the same machines, inside what is skipped with it."""
    return any(
        _skipped(one) == skipped
        and not one.action.kind.checkpoint
        and not set(one.action.what).isdisjoint(act.action.what)
        and meet(procedure, library, one.when, act.when)
        for one in before
    )


def _taken_off(thing: str, act: Act, course: Sequence[Act], place: int) -> Act | None:
    """Return the action that must be done and that only this one undoes, or None."""
    mine = [(at, one) for at, one in enumerate(course) if thing in one.action.what and _skipped(one) is None]
    before = [(at, one) for at, one in mine if at < place and one.action.kind.name in act.action.kind.undoes]
    if not before:
        return None
    at, taken = before[-1]
    again = any(later > at and taken.action.kind.name in one.action.kind.undoes for later, one in mine)
    return None if again else taken
