"""A part that is used once comes off and is not thrown away.

A ring that has been crushed once looks whole and leaks; left on the bench beside the new one, it goes back in.
What is for one time is discarded where it comes off, and a new one is fitted for each that was discarded.
Only what a procedure says of both is compared: one that fits a part where none was before, or whose old part comes off
with something else, is not asked.

Wrong:

```yaml procedure
sections:
  - title: Change the ring
    steps:
      - step: Remove the [plug-ring].
        do:
          - remove: plug-ring   #! one-time-part-kept
      - step: Fit a new [plug-ring].
        do:
          - fit: plug-ring
```

The plug comes out a second time, and its ring goes back in.

```yaml procedure
sections:
  - title: Change the ring
    steps:
      - step: Remove the [level-plug] and discard the [plug-ring].
        do:
          - remove: level-plug
          - discard: plug-ring
      - step: Fit a new [plug-ring], then start the [level-plug] by hand.
        do:
          - fit: plug-ring
          - start: level-plug
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Fit the [plug-ring], then start the [level-plug] by hand.
        do:
          - fit: plug-ring   #! one-time-part-kept
          - start: level-plug
```

Right:

```yaml procedure
sections:
  - title: Change the ring
    steps:
      - step: Remove the [plug-ring] and discard it.
        do:
          - remove: plug-ring
          - discard: plug-ring
      - step: Fit a new [plug-ring].
        do:
          - fit: plug-ring
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.fitments import together
from authoring.model.lacking import lack, laid_out
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Choice, Procedure
from authoring.model.runs import runs
from authoring.model.space import Cells
from authoring.model.specification import When
from authoring.model.things import Equipment, Part
from authoring.rules.rule import Fault

# Steps that an outcome skips or repeats are taken as they are written, so a fault here is likely and not proved.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2",)
ABOUT = ("one-time-part",)

_COMES_OFF = frozenset({"remove", "disconnect", "open"})
_DONE_TO_PARTS = frozenset({"remove", "discard", "fit"})


class _Event(Struct, frozen=True, eq=False):
    """Something done for some fitments: a one-time part is fitted, discarded or removed, or something else comes off.

    `part` is "" where it is something else; several of it at once are one event.
    """

    act: str
    part: str
    mention: Mention
    when: When


class _Kept(Struct, frozen=True):
    """One part that is kept: the event that shows it, and the earlier fitting that it repeats, if it is one."""

    shown: _Event
    earlier: _Event | None


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each one-time part that some fitment takes off and keeps, or fits again."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    events = tuple(_events(procedure, scope))
    for part in dict.fromkeys(event.part for event in events if event.part):
        acts = [event.act for event in events if event.part == part]
        if "remove" in acts or acts.count("fit") > 1:
            mine = [event for event in events if event.part in {part, ""}]
            yield from _of_part(mine, procedure, scope.vehicle)


def _events(procedure: Procedure, scope: Scope) -> Iterator[_Event]:
    for section, step in procedure.steps():
        around = together(section.when, step.when)
        for action in step.actions:
            if action.kind.name not in _COMES_OFF | _DONE_TO_PARTS:
                continue
            for mention in touched(action):
                if mention.role == "what":
                    yield from _of_mention(action.kind.name, mention, around, scope)


def _of_mention(act: str, mention: Mention, around: When, scope: Scope) -> Iterator[_Event]:
    named = scope.things.get(mention.name)
    thing = named.thing if named is not None else None
    if act in _DONE_TO_PARTS and isinstance(thing, Part):
        if thing.one_time:
            yield _Event(act, thing.id, mention, around)
    elif isinstance(thing, Choice):
        for one in thing.parts:
            picked = scope.things.get(one.part)
            # Which of the parts that are told by their size is fitted, nobody knows before it is measured.
            if one.when and picked is not None and isinstance(picked.thing, Part) and picked.thing.one_time:
                yield _Event(act, one.part, mention, together(around, one.when))
    elif act in _COMES_OFF:
        yield _Event(act, "", mention, around)


def _of_part(events: Sequence[_Event], procedure: Procedure, equipment: Equipment) -> Iterator[Fault]:
    """Yield the faults of one part, each for the fewest features that show it."""
    space = laid_out(equipment, procedure.covers, [event.when for event in events])
    if space is None:
        return
    bad: dict[_Kept, Cells] = {}
    for happened, cells in runs(((event, space.where(event.when)) for event in events), space.every):
        for kept in _kept(happened):
            bad[kept] = bad.get(kept, 0) | cells
    for kept, concern in bad.items():
        found = lack(space, concern)
        yield _fault(kept, found.whom, found.fitments)


def _kept(events: Sequence[_Event]) -> list[_Kept]:
    """Return what one fitment keeps of a part: the first removed one, or each one fitted again after it came off."""
    removed = [event for event in events if event.part and event.act == "remove"]
    discarded = sum(event.act == "discard" for event in events)
    if not discarded:
        return [_Kept(event, None) for event in removed[:1]]
    found = []
    fitted: _Event | None = None
    apart = False
    for event in events:
        if event.act == "fit":
            if fitted is not None and apart:
                found.append(_Kept(event, fitted))
            fitted, apart = event, False
        elif event.act == "discard":
            fitted = None
        else:
            apart = True
    # Two places may have a ring each, both discarded before; only what is fitted beyond that was fitted before.
    return found[: max(0, sum(event.act == "fit" for event in events) - discarded)]


def _fault(kept: _Kept, whom: str, fitments: str) -> Fault:
    part = kept.shown.part
    if kept.earlier is None:
        return Fault(
            f'"{part}" is used once, but after it comes off here it is never discarded{whom}.',
            kept.shown.mention.span,
            f"Add discard: {part} to the step that takes it off, and say so in its text.",
            fitments=fitments,
        )
    return Fault(
        f'"{part}" is used once, but is fitted again here and the one before is not discarded{whom}.',
        kept.shown.mention.span,
        f"Add discard: {part} to the step that takes it off again, and fit a new one here.",
        (Related(kept.earlier.mention.span, "fitted here before"),),
        fitments,
    )
