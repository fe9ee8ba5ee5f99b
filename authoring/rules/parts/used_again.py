"""A thing that is never used again comes off and goes back on.

A bolt that was stretched once, or a plate that was bent open, looks sound and does not hold a second time.
What the equipment file says is never used again is discarded where it comes off, so that a new one goes on.
What may be used again under a condition says under which, or the reader cannot decide.
Each way through the job is followed by itself: what is discarded where one method was taken goes back on where the
other was.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: never, say: Its tabs break.}}
```

```yaml procedure
sections:
  - title: Look under the plate
    steps:
      - step: Remove the [lock-plate] and clean the [drop-box].
        do:
          - remove: lock-plate
          - clean: drop-box
      - step: Fit the [lock-plate].
        do:
          - fit: lock-plate   #! used-again
```

It depends, but on what?

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: if}}   #! used-again
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: never, say: Its tabs break.}}
```

```yaml procedure
sections:
  - title: Look under the plate
    steps:
      - step: Remove the [lock-plate], discard it and clean the [drop-box].
        do:
          - remove: lock-plate
          - discard: lock-plate
          - clean: drop-box
      - step: Fit a new [lock-plate].
        do:
          - fit: lock-plate
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Act, acts
from authoring.model.library import Library
from authoring.model.mentions import Mention, touched
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.smallest import Fitment
from authoring.model.things import FastenerGroup, Item
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2",)


class _Event(Struct, frozen=True, eq=False):
    """A thing comes off, goes to waste or goes on."""

    kind: str
    mention: Mention
    act: Act


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each condition of reuse that is not told, and for each thing that goes back on and must not."""
    for equipment in library.equipment.values():
        things: list[Item | FastenerGroup] = [*equipment.items.values(), *equipment.fasteners.values()]
        for thing in things:
            if thing.reuse is not None and thing.reuse.rule == "if" and thing.reuse.say is None:
                words = f'"{thing.id}" may be used again if something is so, but nobody is told what.'
                yield Fault(words, thing.reuse.where.of("is"), 'Add "say: " with what it depends on.')
    for procedure in library.procedures.values():
        ways = ways_of(procedure, library)
        if ways is not None:
            for thing, events in _histories(procedure, library):
                yield from _again(thing, events, ways)


def _histories(procedure: Procedure, library: Library) -> Iterator[tuple[Item | FastenerGroup, list[_Event]]]:
    """Yield each thing that is never used again, with what is done to it in order."""
    scope = library.scope(procedure)
    histories: dict[str, list[_Event]] = {}
    for act in acts(procedure, library):
        kind = _kind(act.action.kind.name) if act.own else ""
        for mention in touched(act.action) if kind else ():
            if mention.role == "what":
                histories.setdefault(mention.name, []).append(_Event(kind, mention, act))
    for name, events in histories.items():
        thing = scope.things[name].thing if name in scope.things else None
        if isinstance(thing, Item | FastenerGroup) and thing.reuse is not None and thing.reuse.rule == "never":
            yield thing, events


def _kind(verb: str) -> str:
    if verb in PUTS_ON:
        return "on"
    return "off" if verb in TAKES_OFF else "waste" if verb == "discard" else ""


def _again(thing: Item | FastenerGroup, events: Sequence[_Event], ways: Ways) -> Iterator[Fault]:
    bad: dict[_Event, list[Fitment]] = {}
    machines = ways.machines([event.act for event in events])
    for machine in machines:
        again = _first_again([event for event in events if ways.happens(event.act, machine)])
        if again is not None:
            bad.setdefault(again, []).append(machine)
    for event, concern in bad.items():
        why = ways.shown(concern, [one for one in machines if one not in concern])
        yield Fault(
            f'"{thing.id}" is never used again, but goes back on here after it came off{why.whom}.',
            event.mention.span,
            f"Add discard: {thing.id} to the step that takes it off, and fit a new one here.",
            (Related(thing.where.of("reuse"), "never used again"),),
            why.fitments,
        )


def _first_again(events: Sequence[_Event]) -> _Event | None:
    off = False
    for event in events:
        if event.kind == "on" and off:
            return event
        off = event.kind == "off" or (off and event.kind != "waste")
    return None
