"""A window is closed to some machines, and nobody is told why.

The apprentice who sees the easier window in the table of another machine takes it, unless the booklet says what goes
wrong then.
A window with `when` says once, under `otherwise`, why it does not hold for the others.

Wrong:

```yaml equipment
values:
  soak:
    name: settling time
    windows:
      - {value: 5 min, source: plate, at: line 7, when: {brake: drum}}   #! window-unexplained
      - {value: 9 min, source: plate, at: line 8}
```

Right:

```yaml equipment
values:
  soak:
    name: settling time
    windows:
      - {value: 5 min, source: plate, at: line 7, when: {brake: drum}, otherwise: The disc stirs the oil.}
      - {value: 9 min, source: plate, at: line 8}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L6",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each window with a condition and without a reason."""
    groups = [one.values for one in library.equipment.values()] + [one.values for one in library.procedures.values()]
    for value in (value for group in groups for value in group.values()):
        for window in value.windows:
            if window.when and window.otherwise is None:
                yield Fault(
                    f'This window of "{value.id}" is not for every machine, but nothing says why.',
                    window.where.of("when"),
                    'Add "otherwise: " with what goes wrong where it does not hold.',
                )
