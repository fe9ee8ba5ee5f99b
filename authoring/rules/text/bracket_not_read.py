"""A name in brackets stands where no name is read.

Brackets are read in instructions, reasons, tips, messages, outcomes and other sentences.
In a title, a name, a place or a label they print as they were typed, and a reader wonders what they mean.

Wrong:

```yaml procedure
title: Check the [level-plug]   #! bracket-not-read
```

Right:

```yaml procedure
title: Check the level plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.brackets import brackets
from authoring.model.labels import labels
from authoring.model.library import Library
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R1",)


def check(library: Library, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each bracket in a text that is printed as it stands."""
    for label in labels(library):
        for bracket in brackets(label.text):
            yield Fault(
                f'"{bracket.typed}" stands in a text that is printed as it is; no name is read there.',
                label.where.find(bracket.typed, *label.keys, nth=bracket.nth),
                "Say the thing in words.",
            )
