"""A safety message asks for something to wear or use that its step does not list.

What is not listed is not laid ready: the gauntlets hang in the other room when the pipe is hot.
A tool or consumable that the avoidance of a message names stands under `with` of the step that calls the message, or
in one of its actions.
For a message that a section calls, some step of the section lists it, and for one that stands under `hazards` some
step of the procedure.
A message that the shop's policy places at a step counts as one that the step calls.
What the shop's policy wants to be worn at the step as well is told as an error of the policy, and not once more here.
What an earlier step has put up and left there, such as chocks, need not be listed again, unless it is to be worn.

Wrong:

```yaml procedure
sections:
  - title: Read the level
    steps:
      - step: Remove the [level-plug].
        safety: [hot-pipe]   #! protection-not-listed
        with: [spanner]
        do:
          - remove: level-plug
```

Right:

```yaml procedure
sections:
  - title: Read the level
    steps:
      - step: Remove the [level-plug].
        safety: [hot-pipe]
        with: [spanner, gauntlets]
        do:
          - remove: level-plug
```
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.action_kind import Kind
from authoring.model.brackets import brackets
from authoring.model.course import meet
from authoring.model.in_force import placed_by_policy
from authoring.model.library import Library, Scope
from authoring.model.procedure import Procedure, Step
from authoring.model.specification import When
from authoring.model.things import Message
from authoring.model.unworn import unworn
from authoring.rules.rule import Fault

# What was put up by an earlier step may still be there.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("A2", "S2")

_PUTS_UP = frozenset({"support", "lock", "hold", "isolate"})
_SENTENCE = re.compile(r"[^.!?;]+")
_WORN = re.compile(r"\b(wear|put on)\b", re.IGNORECASE)
_PROTECTS = frozenset({Kind.TOOL, Kind.CONSUMABLE})


class _Listed(Struct, frozen=True):
    """What is at hand at a step: what is listed or was told to be missing, and what an earlier step has put up."""

    here: set[str]
    standing: set[str]


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each call of a message whose protection is not listed where it is called."""
    scope = library.scope(procedure)
    by_policy = _by_policy(procedure, library)
    steps = [step for _, step in procedure.steps()]
    for place, name in enumerate(procedure.hazards or ()):
        at = procedure.where.of("hazards", place)
        yield from _unlisted(name, _listed(steps, by_policy), "no step of the procedure lists it", at, scope)
    placed = placed_by_policy(procedure, library)
    standing: set[str] = set()
    for section in procedure.sections:
        for place, name in enumerate(section.safety):
            at = section.where.of("safety", place)
            listed = _listed(section.steps, by_policy, standing)
            yield from _unlisted(name, listed, "no step of this section lists it", at, scope)
        for step in section.steps:
            called = [(name, step.where.of("safety", place)) for place, name in enumerate(step.safety)]
            called += [(message.id, step.where.key("step")) for message in placed.get(step.id, ())]
            for name, at in called:
                if _needed(name, section.when, step.when, scope, library):
                    listed = _listed([step], by_policy, standing)
                    yield from _unlisted(name, listed, "this step does not list it", at, scope)
            if any(action.kind.name in _PUTS_UP for action in step.actions):
                standing |= _used([step])


def _by_policy(procedure: Procedure, library: Library) -> Mapping[str, set[str]]:
    """Return, by the id of a step, what the policy finds missing there."""
    found: dict[str, set[str]] = {}
    for one in unworn(procedure, library):
        found.setdefault(one.demand.step.id, set()).update(one.names)
    return found


def _needed(name: str, section: When, step: When, scope: Scope, library: Library) -> bool:
    """Tell whether the message is for any machine that has the step."""
    message = scope.safety.get(name)
    covers = scope.procedure.covers
    return message is not None and meet(scope.procedure, library, covers, message.when, section, step)


def _unlisted(name: str, listed: _Listed, why: str, at: Span, scope: Scope) -> Iterator[Fault]:
    message = scope.safety.get(name)
    if message is None:
        return  # an unknown name is told elsewhere
    for thing, worn in _protections(message, scope).items():
        if thing not in listed.here and (worn or thing not in listed.standing):
            yield Fault(
                f'The safety message "{name}" asks for "{thing}", but {why}.',
                at,
                f'Add "{thing}" to "with" of the step, so that it is laid ready.',
                (Related(message.where.of("avoidance"), "asked for here"),),
            )


def _listed(steps: Sequence[Step], by_policy: Mapping[str, set[str]], standing: Iterable[str] = ()) -> _Listed:
    """Return what is at hand at these steps; what the policy finds missing counts, since it was told."""
    told = (by_policy.get(step.id, set()) for step in steps)
    return _Listed(_used(steps).union(*told), set(standing))


def _used(steps: Iterable[Step]) -> set[str]:
    """Return all that these steps list, and what their actions and hands hold."""
    found: set[str] = set()
    for step in steps:
        found |= {*step.uses, *(step.holding.hold if step.holding is not None else ())}
        found |= {name for action in step.actions for _, name in action.names()}
    return found


def _protections(message: Message, scope: Scope) -> Mapping[str, bool]:
    """Return the tools and consumables that the avoidance names, and whether each is to be worn."""
    found: dict[str, bool] = {}
    for sentence in _SENTENCE.findall(message.avoidance or ""):
        worn = _WORN.search(sentence) is not None
        for bracket in brackets(sentence):
            named = scope.things.get(bracket.name)
            if named is not None and named.kind in _PROTECTS:
                found[named.id] = found.get(named.id, False) or worn
    return found
