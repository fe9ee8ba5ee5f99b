"""Nothing uses this.

A value, figure or message that no step uses was either forgotten where it is needed, or is left over;
both mislead whoever reads the file next.
In a procedure this covers its values, part choices, figures and safety messages and the ids of its steps and sections;
in an equipment file and the stock, what no procedure names; and sources that no value cites.
An item that covers another, or that fasteners are on, is used by that.
Fasteners that are never touched are used where the item that they are on or among, or other fasteners of it, are
worked on: that is where a hand must pass them by.
The id of a method may stand: it is a name for the way that was taken.
Options and modifications have rules of their own.

Wrong:

```yaml procedure
values:
  gap: {name: gap at the lid, value: 2 to 3 mm, source: plate, at: line 7}   #! unused-thing
```

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  hammer: {name: soft-faced hammer}   #! unused-thing
```

A source that nothing cites.

```yaml shop
sources:
  bench-book: {title: Fennel Lane bench book, edition: "3, 2026", kind: shop}
  wall-chart: {title: Wall chart, edition: "2019", kind: shop}   #! unused-thing
```

Right:

```yaml procedure
values:
  soak: {name: settling time, value: 5 min, source: plate, at: line 7}
sections:
  - title: Read the level
    steps:
      - step: Wait for the [soak].
        do:
          - wait: soak
      - step: Remove the [level-plug] and discard the [plug-ring].
        safety: [hot-pipe]
        with: [spanner, gauntlets]
        do:
          - remove: level-plug
          - discard: plug-ring
      - step: Look at the level of the [box-oil].
        do:
          - inspect:
              what: box-oil
              outcomes:
                - {found: The oil stands at the lower edge of the hole., then: go-on}
                - {found: The oil stands lower., then: put-right, say: Top up until oil runs out.}
      - step: Fit a new [plug-ring], then start the [level-plug] by hand.
        do:
          - fit: plug-ring
          - start: level-plug
      - step: Tighten the [level-plug] and wipe the [drop-box] dry with a [rag].
        with: [wrench, rag]
        do:
          - tighten: level-plug
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.action_kind import Kind
from authoring.model.applicability import of_procedure as conditions_of
from authoring.model.library import Library, Named, of_equipment, of_procedure, of_stock
from authoring.model.mentions import of_equipment as mentions_of_equipment
from authoring.model.procedure import Procedure, Step
from authoring.model.specifications import stated_values
from authoring.model.things import Equipment, Message, Source
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.WARNING
REQUIREMENTS = ("A6",)
TOGETHER = Together.EVERY

_CURE = "Name it where it is needed, or remove it."
_REFERRED = frozenset({Kind.SECTION, Kind.STEP})
# Whether something follows from an option, and whether a modification is done and told, have their own rules.
_ASKED_ELSEWHERE = frozenset({Kind.OPTION, Kind.MODIFICATION})


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each thing of the library that nothing uses."""
    if library.partial:
        return  # the use may well stand in the file that could not be read
    for procedure in library.procedures.values():
        yield from _in_procedure(procedure, library)
    for equipment in library.equipment.values():
        yield from _in_equipment(equipment, library)
    yield from _in_shared(library)
    yield from _sources(library)


def _names(library: Library, procedures: Iterable[Procedure], wants: str = "thing") -> set[str]:
    scopes = (library.scope(procedure) for procedure in procedures)
    return {mention.name for scope in scopes for mention in scope.mentions if mention.wants == wants}


def _in_procedure(procedure: Procedure, library: Library) -> Iterator[Fault]:
    used = _names(library, [procedure]) | {feature for one in conditions_of(procedure) for feature in one.when}
    for named in of_procedure(procedure):
        if named.id in used or "." in named.id or named.kind in _ASKED_ELSEWHERE or _is_method(named):
            continue  # an id with a dot is not the author's
        if named.kind in _REFERRED:
            words = f'Nothing in this procedure refers to the id "{named.id}".'
            yield Fault(words, named.where.of("id"), "Leave the id out.")
        else:
            yield _unused(named, "nothing in this procedure uses it")
    called = _names(library, [procedure], "message")
    for message in procedure.safety.values():
        if message.id not in called:
            yield _uncalled(message, "no step, section or hazard of this procedure calls it")


def _is_method(named: Named) -> bool:
    return isinstance(named.thing, Step) and named.thing.method is not None


def _in_equipment(equipment: Equipment, library: Library) -> Iterator[Fault]:
    procedures = [one for one in library.procedures.values() if one.equipment == equipment.id]
    if not procedures:
        message = f'No procedure is written for the equipment "{equipment.id}".'
        yield Fault(message, equipment.where.of("equipment"), "Write one, or remove the file.")
        return
    used = _names(library, procedures)
    used |= {mention.name for mention in mentions_of_equipment(equipment)}
    used |= {item.id for item in equipment.items.values() if item.covers}
    used |= _passed_by(equipment, _worked_on(library, procedures))
    for named in of_equipment(equipment):
        if named.id not in used:
            yield _unused(named, "no procedure for this equipment uses it")


def _worked_on(library: Library, procedures: Iterable[Procedure]) -> set[str]:
    scopes = (library.scope(procedure) for procedure in procedures)
    return {mention.name for scope in scopes for mention in scope.mentions if mention.role == "what"}


def _passed_by(equipment: Equipment, worked_on: set[str]) -> set[str]:
    """Return the groups that are never touched and sit where somebody works."""
    groups = equipment.fasteners.values()
    places = worked_on | {group.on for group in groups if group.on is not None and group.id in worked_on}
    return {group.id for group in groups if group.untouched and not places.isdisjoint({group.on, group.among})}


def _in_shared(library: Library) -> Iterator[Fault]:
    used = _names(library, library.procedures.values())
    for named in of_stock(library.stock) if library.stock is not None else ():
        if named.id not in used:
            yield _unused(named, "no procedure uses it")
    called = _names(library, library.procedures.values(), "message")
    # One that a policy names is placed where it is needed; whether any step meets the policy has its own rule.
    shop = library.shop
    called |= {one.message for one in shop.policy.values() if one.message} if shop is not None else set()
    for message in shop.safety.values() if shop is not None else ():
        if message.id not in called:
            yield _uncalled(message, "no procedure calls it")


def _sources(library: Library) -> Iterator[Fault]:
    cited = {id(stated.source) for stated in stated_values(library)}
    for source in _all_sources(library):
        if id(source) not in cited:
            yield Fault(f'The source "{source.id}" is cited by no value.', source.where.span, _CURE)


def _all_sources(library: Library) -> Iterator[Source]:
    if library.shop is not None:
        yield from library.shop.sources.values()
    for equipment in library.equipment.values():
        yield from equipment.sources.values()


def _unused(named: Named, why: str) -> Fault:
    sort = named.kind.value.removeprefix("an ").removeprefix("a ")
    return Fault(f'The {sort} "{named.id}" stands here, but {why}.', named.where.span, _CURE)


def _uncalled(message: Message, why: str) -> Fault:
    cure = 'List it under "safety" of the step that it guards, or remove it.'
    return Fault(f'The safety message "{message.id}" stands here, but {why}.', message.where.span, cure)
