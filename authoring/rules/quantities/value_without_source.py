"""A value does not say where it comes from.

A torque that nobody can look up cannot be checked, and nobody notices when the maker changes it.
Every torque, capacity and value names its source and where in it: page, table, line.
What is common practice has no place in a document, so for such a source `at` may be left out.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate}   #! value-without-source
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    capacity: {value: 1.20 ± 0.05 L}   #! value-without-source
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.specifications import Stated, stated_values
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A5",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each value without a source, or without its place in a source that is known."""
    for stated in stated_values(library):
        yield from _fault(stated)


def _fault(stated: Stated) -> Iterator[Fault]:
    specification, source = stated.specification, stated.source
    if specification.source is None:
        span = specification.where.of("value")
        cure = 'Add "source: " with the short name of the document, and "at: " with the place in it.'
        yield Fault(f"{stated.called} has no source.", span, cure)
    elif specification.at is None and source is not None and source.kind != "common-practice":
        span = specification.where.of("source")
        message = f'{stated.called} does not say where in "{source.id}" it stands.'
        yield Fault(message, span, 'Add "at: " with the page, table or line.')
