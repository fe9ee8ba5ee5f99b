"""The procedure covers no machine that exists.

Every feature and value in `covers` is known, but the equipment says that they never occur together.
Such a booklet would be proved for nothing at all.

Wrong:

```yaml equipment
features:
  brake: {name: parking brake, tell: Look behind the rear wheel., values: {drum: drum brake, disc: disc brake}}
  axle: {name: axle, tell: Read the plate., values: {narrow: narrow axle, wide: wide axle}}
never:
  - {brake: disc, axle: narrow}
```

```yaml procedure
covers: {brake: [disc], axle: [narrow]}   #! covers-nothing
```

Right:

```yaml equipment
features:
  brake: {name: parking brake, tell: Look behind the rear wheel., values: {drum: drum brake, disc: disc brake}}
  axle: {name: axle, tell: Read the plate., values: {narrow: narrow axle, wide: wide axle}}
never:
  - {brake: disc, axle: narrow}
```

```yaml procedure
covers: {brake: [disc], axle: [wide]}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.applicability import known
from authoring.model.fitments import said
from authoring.model.library import Library
from authoring.model.space import possible
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "V4")
ABOUT = ("condition",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for equipment of which nothing can exist, and for procedures that cover none of what can."""
    barren = {name for name, equipment in library.equipment.items() if not _exists(equipment)}
    for name in sorted(barren):
        yield Fault(
            f'"never" leaves no machine of the equipment "{name}": it rules out every combination of features.',
            library.equipment[name].where.key("never"),
            "Remove the combinations that do occur.",
        )
    for procedure in library.procedures.values():
        equipment = library.equipment.get(procedure.equipment)
        if equipment is None or procedure.equipment in barren or not known(procedure.covers, equipment):
            continue
        if not possible(equipment, procedure.covers):
            yield Fault(
                f"The procedure covers no machine that exists ({said(procedure.covers, equipment)}).",
                procedure.where.of("covers"),
                'Cover a combination of features that occurs, or correct "never" in the equipment file.',
                (Related(equipment.where.key("never"), "the combinations that never occur"),),
                said(procedure.covers, equipment),
            )


def _exists(equipment: Equipment) -> bool:
    if not all(known(never, equipment) for never in equipment.never):
        return True  # a misspelt combination is told already
    tied = {feature for never in equipment.never for feature in never}
    return possible(equipment, {feature: tuple(equipment.features[feature].values) for feature in tied})
