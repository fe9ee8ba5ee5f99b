"""A feature is asked for a value that it cannot have.

No machine has that value, so whatever hangs on it is shown to nobody.

Wrong:

```yaml procedure
covers: {brake: [disk]}   #! unknown-feature-value
```

Right:

```yaml procedure
covers: {brake: [disc]}
```
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.applicability import Applicability, of_equipment, of_procedure, of_shop
from authoring.model.library import Library
from authoring.model.things import Feature
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1",)
ABOUT = ("condition",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each value that its feature does not have."""
    for equipment in library.equipment.values():
        yield from _unknown(of_equipment(equipment), {name: [one] for name, one in equipment.features.items()})
    for procedure in library.procedures.values():
        vehicle = library.scope(procedure).vehicle
        if vehicle is not None:
            features = vehicle.features
            yield from _unknown(of_procedure(procedure), {name: [one] for name, one in features.items()})
    if library.shop is not None and not library.partial:  # else the value may stand in an unread file
        yield from _unknown(of_shop(library.shop), _everywhere(library))


def _everywhere(library: Library) -> Mapping[str, list[Feature]]:
    found: dict[str, list[Feature]] = {}
    for equipment in library.equipment.values():
        for name, feature in equipment.features.items():
            found.setdefault(name, []).append(feature)
    return found


def _unknown(stated: Iterable[Applicability], features: Mapping[str, list[Feature]]) -> Iterator[Fault]:
    for one in stated:
        for name, values in one.when.items():
            if name not in features:
                continue  # told as an unknown feature
            allowed = list(dict.fromkeys(value for feature in features[name] for value in feature.values))
            for place, value in enumerate(values):
                if value not in allowed:
                    yield Fault(
                        f'The feature "{name}" has no value "{value}".',
                        one.value_span(name, place),
                        did_you_mean(value, allowed) or f"Its values are {', '.join(allowed)}.",
                        (Related(features[name][0].where.span, "the feature"),),
                    )
