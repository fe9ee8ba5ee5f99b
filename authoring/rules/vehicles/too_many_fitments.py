"""A question about fitments has more answers than are tried.

Each part choice and condition is proved for every combination of the features it names.
So is what is done to each thing, with the methods and optional steps that decide about it.
Beyond 1 048 576 combinations that takes too long, so nothing is claimed about it, and this says so.
Ten features of four values make as many; a choice that depends on more is better asked in two.
Where amounts and temperatures are followed, the machines and ways that differ in what is done are gone through one by
one, and those are 4096 at most, or fewer where there are more than 65 536 combinations.
A job is followed into what it carries out as far as that comes to 10 000 actions and 100 levels.

Wrong:

```yaml equipment
features:
  brake: {name: parking brake, tell: Look behind the rear wheel., values: {drum: drum brake, disc: disc brake}}
  batch: {name: batch, tell: Read the plate., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  axle: {name: axle, tell: Read the plate., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  tyre: {name: tyre, tell: Read its side., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  seat: {name: seat, tell: Look below it., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  hitch: {name: hitch, tell: Look behind., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  lamp: {name: lamp, tell: Look in front., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  cab: {name: cab, tell: Look at the roof., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
```

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015}
```

```yaml procedure
choices:
  ring:   #! too-many-fitments
    name: ring of the plug
    question: Which machine is it?
    parts:
      - part: plug-ring
        when: {brake: drum, batch: a, axle: a, tyre: a, seat: a, hitch: a, lamp: a, cab: a}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        when: {brake: disc}
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined
from authoring.model.applicability import known, of_equipment, of_procedure
from authoring.model.choosing import features_of
from authoring.model.course import DEEPEST, MOST_ACTS, Act, acts, too_long
from authoring.model.fitments import concerned, together
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.runs import MOST_RUNS, runs
from authoring.model.space import LIMIT, too_many
from authoring.model.things import Equipment
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "V4")
ABOUT = ("condition",)

_CURE = "Ask for fewer features at once, or cover fewer values."
_NAMED = 8


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each choice, condition and thing about which nothing can be proved."""
    for equipment in library.equipment.values():
        for one in of_equipment(equipment):
            if one.keys[0] == "when" and known(one.when, equipment) and too_many(equipment, one.when, one.when):
                yield Fault(_message("This condition", one.when, equipment), one.span, _CURE)
    for procedure in library.procedures.values():
        ways = ways_of(procedure, library)
        if ways is not None:
            yield from _in_procedure(procedure, library.scope(procedure).vehicle or ways.vehicle)
            yield from _of_things(procedure, library, ways)
        if too_long(procedure, library):
            yield Fault(
                f"With all that it carries out, this job comes to more than {MOST_ACTS} actions or {DEEPEST} levels, "
                "so it is not followed into that.",
                procedure.where.of("procedure"),
                "Carry out fewer procedures, or leave out what they carry out in their turn.",
            )


def _in_procedure(procedure: Procedure, equipment: Equipment) -> Iterator[Fault]:
    for choice in procedure.choices.values():
        features = features_of(procedure, choice)
        if too_many(equipment, procedure.covers, features):
            yield Fault(_message(f'The choice "{choice.id}"', features, equipment), choice.where.span, _CURE)
    for one in of_procedure(procedure):
        whole = together(procedure.covers, one.around, one.when)
        if too_many(equipment, whole, whole):
            yield Fault(_message("This condition", whole, equipment), one.span, _CURE)


def _of_things(procedure: Procedure, library: Library, ways: Ways) -> Iterator[Fault]:
    """Yield a fault for the first thing of those for which the same features decide too many ways."""
    histories: dict[str, list[Act]] = {}
    for act in acts(procedure, library):
        for name in act.action.what:
            histories.setdefault(name, []).append(act)
    told: set[frozenset[str]] = set()
    for name, mine in histories.items():
        features = frozenset(feature for when in ways.conditions(mine) for feature in when)
        if features in told:
            continue
        message = ""
        if too_many(ways.vehicle, procedure.covers, features):
            message = _message(f'What is done to "{name}"', features, ways.vehicle)
        elif _goes_too_many_ways(mine, ways):
            message = (
                f'What is done to "{name}" differs on too many machines and ways to go through them one by one, '
                "so amounts and temperatures are not followed."
            )
        if message:
            told.add(features)
            yield Fault(message, mine[0].step.where.span, _CURE)


def _goes_too_many_ways(mine: Sequence[Act], ways: Ways) -> bool:
    if 2 ** len({act.steps for act in mine}) <= MOST_RUNS:
        return False
    space = ways.space(mine)
    return space is not None and space.every != 0 and not runs(ways.marked(mine, space), space.every)


def _message(subject: str, features: Iterable[str], equipment: Equipment) -> str:
    every = concerned(equipment, features)
    names = [one.name for one in equipment.features.values() if one.id in every]
    more = [f"{len(names) - _NAMED} others"] if len(names) > _NAMED else []
    return (
        f"{subject} depends on more than {LIMIT} combinations of {joined([*names[:_NAMED], *more])}, "
        "so it cannot be proved."
    )
