"""One short name stands for two things.

The booklet would have to guess which of the two a step means, and the reader would see the wrong one.
A name may be used once among a procedure, its equipment and the stock.
An option may not have the name of a feature, and neither may a part choice where some `when` names it: the same `when`
would ask for either.
A procedure's safety messages and an equipment's sources may not repeat a name of the shop file either,
and no library has two shop files, two stock files, or two files for the same equipment or procedure.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  wrench: {name: wrench holder}   #! duplicate-name
```

A message of the procedure would hide the shop's message of the same name.

```yaml procedure
safety:
  hot-pipe:   #! duplicate-name
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Keep your arm clear of the pipe.
```

Right:

```yaml procedure
hazards: [hot-pipe, hot-box]
safety:
  hot-box:
    harm: person
    severity: moderate
    likelihood: could
    hazard: The drop box is warm after a drive.
    consequence: It burns skin that stays on it.
    avoidance: Keep your arm off the box.
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.action_kind import Kind
from authoring.model.applicability import of_procedure
from authoring.model.changes import Option
from authoring.model.clashes import clashes
from authoring.model.library import Library, Named
from authoring.model.procedure import Choice, Procedure
from authoring.model.things import Equipment, Message, Source
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6",)

_LISTED = frozenset({Kind.SECTION, Kind.STEP})


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each name that a wider scope, or the same file, has already."""
    for thing, other in clashes(library, lambda named: named.id):
        yield _twice(thing.id, _place(thing), _place(other), f"{other.kind.value} has it already")
    for procedure in library.procedures.values():
        if procedure.equipment in library.equipment:
            yield from _like_features(procedure, library.equipment[procedure.equipment])
    if library.shop is None:
        return
    for procedure in library.procedures.values():
        yield from _hidden(procedure.safety, library.shop.safety, "a safety message of the shop has it already")
    for equipment in library.equipment.values():
        yield from _hidden(equipment.sources, library.shop.sources, "a source of the shop has it already")


def _like_features(procedure: Procedure, equipment: Equipment) -> Iterator[Fault]:
    """Yield a fault for each option with the name of a feature, and for each such choice that a condition may mean."""
    asked = {name for one in of_procedure(procedure) for name in one.when}
    choices = (choice for choice in procedure.choices.values() if choice.id in asked)
    decisions: list[Option | Choice] = [*procedure.options.values(), *choices]
    for decided in decisions:
        feature = equipment.features.get(decided.id)
        if feature is not None:
            yield _twice(
                decided.id, decided.where.span, feature.where.span, "a feature of the equipment has it already"
            )


def _place(named: Named) -> Span:
    """Return where a name is given: the key that leads to the thing, or the id of a step or section."""
    return named.where.of("id") if named.kind in _LISTED else named.where.span


def _hidden(
    mine: Mapping[str, Message] | Mapping[str, Source],
    shared: Mapping[str, Message] | Mapping[str, Source],
    label: str,
) -> Iterator[Fault]:
    for name, one in mine.items():
        if name in shared:
            yield _twice(name, one.where.span, shared[name].where.span, label)


def _twice(name: str, span: Span, other: Span, label: str) -> Fault:
    message = f'The name "{name}" stands for two things.'
    cure = "Give one of them another name, and change the places that mean it."
    return Fault(message, span, cure, (Related(other, label),))
