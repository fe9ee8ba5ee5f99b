"""A value cites a source that is not stated.

The annex of the booklet could not name the document, and nobody could look the value up.
Sources stand in the equipment file, or in the shop file where several machines share them.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plaet, at: line 4}   #! unknown-source
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
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.library import Library
from authoring.model.specifications import stated_values
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A5", "A6", "C6")


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each value whose source is stated neither in its equipment nor in the shop file."""
    if library.partial:
        return  # the source may well stand in the file that could not be read
    for stated in stated_values(library):
        name = stated.specification.source
        if name is not None and stated.source is None:
            cure = did_you_mean(name, stated.sources) or 'State it under "sources" of the equipment or of the shop.'
            yield Fault(f'No source is called "{name}".', stated.specification.where.of("source"), cure)
