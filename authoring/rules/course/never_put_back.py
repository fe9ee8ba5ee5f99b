"""A thing comes off, is opened or shut down, and nothing says what becomes of it.

A bolt left in the tray and a plug left hanging are found on the road.
What is removed, disconnected, opened, loosened, isolated, held up, locked or raised is brought back by a later action
for the same machines and on the same way through the job, or its fate is told: it is discarded, its place is left
empty, another one is fitted that `replaces` it, a modification leaves it out or replaces it, or the procedure says
under `leaves` that it stays so.
Fasteners are back when they are tightened.
It is an error, and a warning where the thing was laid aside with `keep`, since that may be for somebody to take along.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
```
```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator   #! never-put-back
      - step: Remove the [level-plug].
        do:
          - remove: level-plug   #! never-put-back
      - step: Start the [level-plug] by hand and tighten it.
        when: {brake: drum}
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
```
```yaml procedure
leaves: {isolator: isolated}
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Start the [level-plug] by hand and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.action_kinds import action_kinds
from authoring.model.course import Act, acts
from authoring.model.library import Library, Scope
from authoring.model.mentions import touched
from authoring.model.on_and_off import PUTS_ON, meant, wholes
from authoring.model.procedure import Procedure
from authoring.model.space import Cells
from authoring.model.things import FastenerGroup
from authoring.model.ways import Shown, Ways, ways_of
from authoring.rules.rule import Fault

# What is kept may be meant for somebody; everything else is certain and told as an error.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1", "H6")

_SETTLES = frozenset({"discard", "leave-empty"})
_LEFT = {
    "remove": ("removed", {"removed"}),
    "disconnect": ("disconnected", {"removed"}),
    "open": ("opened", {"open"}),
    "loosen": ("loosened", {"removed"}),
    "isolate": ("isolated", {"isolated", "proved-dead"}),
    "support": ("held up", {"supported", "chocked"}),
    "lock": ("locked", {"supported", "chocked"}),
    "raise": ("raised", {"raised"}),
}
"""What each action that is undone later does, and the states under `leaves` that let it stay."""

_CURES = {
    "loosen": "Tighten",
    "isolate": "Restore",
    "support": "Release",
    "lock": "Release",
    "raise": "Lower",
    "open": "Close",
    "disconnect": "Connect",
}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that some machine is left without, on some way through the job."""
    ways = ways_of(procedure, library)
    if ways is None:
        return
    scope = library.scope(procedure)
    course = acts(procedure, library)
    by_name = _by_name(course, scope)
    for verb, back in _undone().items():
        for thing in dict.fromkeys(name for act in course if act.action.kind.name == verb for name in act.action.what):
            if thing in scope.things and not _stays(thing, verb, procedure):
                places = {at for name in _names(thing, scope) for at in by_name.get(name, ())}
                mine = [course[at] for at in sorted(places)]
                yield from _of_thing(thing, verb, _back(thing, verb, back, scope), mine, ways, scope)


def _undone() -> Mapping[str, frozenset[str]]:
    """Return each action that another one undoes, with those that do so."""
    found: dict[str, set[str]] = {}
    for kind in action_kinds().values():
        for verb in kind.undoes:
            found.setdefault(verb, set()).add(kind.name)
    return {verb: frozenset(back) for verb, back in found.items() if verb in _LEFT}


def _back(thing: str, verb: str, back: frozenset[str], scope: Scope) -> frozenset[str]:
    if isinstance(scope.things[thing].thing, FastenerGroup) and verb in {"remove", "loosen"}:
        return frozenset(kind.name for kind in action_kinds().values() if kind.torque)
    return back | PUTS_ON | {"close", "restore"} if verb in {"remove", "disconnect", "open", "isolate"} else back


def _stays(thing: str, verb: str, procedure: Procedure) -> bool:
    """Tell whether the job leaves a thing so on purpose, or found it so."""
    states = _LEFT[verb][1]
    return any(need.thing == thing and need.state in states for need in (*procedure.leaves, *procedure.needs))


def _of_thing(
    thing: str, verb: str, back: frozenset[str], mine: Sequence[Act], ways: Ways, scope: Scope
) -> Iterator[Fault]:
    names = set(wholes(thing, scope.things))
    changes = [change for one in ways.procedures for change in one.modifications.values()]
    gone = [change.when for change in changes if not names.isdisjoint({*change.leaves_out, *change.replaces})]
    space = ways.space(mine, more=gone)
    if space is None:
        return
    marked = [(act, ways.cells(act, space) & ~space.either(gone)) for act in mine]
    for last, bad in _open_at_the_end(thing, verb, back, marked, names).items():
        if bad and (last.own or _left_to_the_caller(thing, verb, last, ways)):
            after = marked[mine.index(last) + 1 :]
            kept = any(
                act.action.kind.name == "keep" and thing in act.action.what and cells & bad for act, cells in after
            )
            yield _fault(thing, verb, last, ways.shown(bad, space), kept=kept)


def _by_name(course: Sequence[Act], scope: Scope) -> Mapping[str, list[int]]:
    """Return the places in the course at which something may happen to each thing."""
    found: dict[str, list[int]] = {}
    for at, act in enumerate(course):
        names = {one for name in act.action.what for one, _ in meant(name, scope.things.get(name))}
        names |= {need.thing for need in act.doing.leaves}
        for name in (*names, *([act.action.roles["replaces"]] if "replaces" in act.action.roles else ())):
            found.setdefault(name, []).append(at)
    return found


def _names(thing: str, scope: Scope) -> set[str]:
    """Return a thing, what it stands for, and the larger things that it is part of."""
    return {*wholes(thing, scope.things), *(name for name, _ in meant(thing, scope.things[thing]))}


def _open_at_the_end(
    thing: str, verb: str, back: frozenset[str], marked: Sequence[tuple[Act, Cells]], names: set[str]
) -> Mapping[Act, Cells]:
    """Return the last of these actions that undoes a thing, and where none after it settles what becomes of it."""
    left: dict[Act, Cells] = {}
    for act, done in marked:
        kind = act.action.kind.name
        mine = names.isdisjoint(act.action.what) or thing in act.action.what
        undoes = kind == verb and thing in act.action.what
        settles = act.action.roles.get("replaces") in names or kind in _SETTLES or (kind in back and mine)
        if undoes or settles:
            left = {one: cells & ~done for one, cells in left.items()}
        if undoes:
            left[act] = done
        if any(need.thing == thing and need.state not in _LEFT[verb][1] for need in act.doing.leaves):
            left = {one: cells & ~done for one, cells in left.items()}
    return left


def _left_to_the_caller(thing: str, verb: str, last: Act, ways: Ways) -> bool:
    """Tell whether a procedure that is carried out leaves the thing so on purpose; what it forgets it tells itself."""
    return any(need.thing == thing and need.state in _LEFT[verb][1] for need in ways.procedure_of(last).leaves)


def _fault(thing: str, verb: str, last: Act, shown: Shown, *, kept: bool) -> Fault:
    but = "and kept, but is never brought back" if kept else "and is never brought back"
    return Fault(
        f'"{thing}" is {_LEFT[verb][0]} here {but}{shown.whom}.',
        _place(thing, last),
        f'{_CURES.get(verb, "Fit")} "{thing}" in a later step, or say what becomes of it: discard, leave-empty, '
        '"replaces" of what is fitted instead, "leaves-out" of a modification, or "leaves" of the procedure.',
        () if last.own else (Related(last.action.where.span, "done here, in what is carried out"),),
        shown.fitments,
        None if kept else Severity.ERROR,
    )


def _place(thing: str, last: Act) -> Span:
    """Return the place of the thing in its action, or of the step that carries the action out."""
    if not last.own:
        return last.step.where.of("step") if last.step.written else last.step.where.span
    return next(one.span for one in touched(last.action) if one.role == "what" and one.name == thing)
