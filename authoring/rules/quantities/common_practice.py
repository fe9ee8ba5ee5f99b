"""A value rests on common practice alone.

That may be right, and often nothing better is published; but no maker and no standard answers for it.
The booklet says so beside the value; this note lets whoever approves the procedure look at each of them.

Wrong:

```yaml equipment
sources:
  plate: {title: Data plate notes, edition: "2", kind: maker}
  habit: {title: Common practice of the trade, kind: common-practice}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: habit}   #! common-practice
```

Right:

```yaml equipment
sources:
  plate: {title: Data plate notes, edition: "2", kind: maker}
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
from authoring.model.specifications import stated_values
from authoring.rules.rule import Fault

SEVERITY = Severity.NOTE
REQUIREMENTS = ("A5", "N20")
ABOUT = ("common-practice",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a note for each value whose source is common practice."""
    for stated in stated_values(library):
        if stated.source is not None and stated.source.kind == "common-practice":
            yield Fault(
                f"{stated.called} rests on common practice alone.",
                stated.specification.where.of("source"),
                "Cite the maker's data, a standard or a measurement of the shop where there is one.",
            )
