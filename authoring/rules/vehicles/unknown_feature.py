"""A feature is named that the equipment does not have.

A step for a feature nobody knows is shown to nobody, or to everybody; either way the wrong machine is worked on.
This covers `when` and `covers` of a procedure, `when` and `never` of the equipment,
and `when` of the shop's messages, which must name a feature of some equipment.

Wrong:

```yaml procedure
covers: {brakes: [disc]}   #! unknown-feature
```

Right:

```yaml procedure
covers: {brake: [disc]}
```
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.applicability import Applicability, of_equipment, of_procedure, of_shop
from authoring.model.library import Library
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1",)
ABOUT = ("condition",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each mention of a feature that the equipment in question lacks."""
    for equipment in library.equipment.values():
        yield from _unknown(of_equipment(equipment), equipment.features, f'The equipment "{equipment.id}"')
    for procedure in library.procedures.values():
        vehicle = library.scope(procedure).vehicle
        if vehicle is not None:
            features = vehicle.features
            yield from _unknown(of_procedure(procedure), features, f'The equipment "{procedure.equipment}"')
    if library.shop is not None and not library.partial:  # else the equipment may stand in an unread file
        everywhere = {feature for equipment in library.equipment.values() for feature in equipment.features}
        yield from _unknown(of_shop(library.shop), everywhere, "Every equipment of this library")


def _unknown(stated: Iterable[Applicability], features: Collection[str], owner: str) -> Iterator[Fault]:
    for one in stated:
        for feature in one.when:
            if feature not in features:
                cure = did_you_mean(feature, features) or _cure(features)
                yield Fault(f'{owner} lacks the feature "{feature}".', one.feature_span(feature), cure)


def _cure(features: Collection[str]) -> str:
    if not features:
        return "State the feature in the equipment file, with its values and how to tell them."
    return f"Name one of its features, or state this one in the equipment file: {', '.join(sorted(features))}."
