"""A sentence stops where a comment begins.

In YAML a number sign behind a blank begins a comment, and the rest of the line is gone without a word.
"Use the prop in hole # 3" would print as "Use the prop in hole", and an apprentice would pick a hole.
What ends with a full stop may have a comment behind it.

Wrong:

```yaml procedure
conditions:
  - The machine stands on lift # 2   #! cut-by-comment
```

Right:

```yaml procedure
conditions:
  - "The machine stands on lift # 2."
  - The machine stands level.   # read on the bubble in the cab
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.texts import Prose, prose_of, prose_of_message
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("I2", "S2")

_ENDS = (".", "!", "?", ":", ";")


def check(library: Library, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each sentence without an end that has a comment behind it."""
    for prose in _prose(library):
        places = prose.where.document.places
        behind = places.behind((*prose.where.path, *prose.keys))
        if behind.lstrip().startswith("#") and not prose.text.rstrip().endswith(_ENDS):
            yield Fault(
                "The text stops here without an end, since what stands behind it is a comment.",
                prose.where.of(*prose.keys),
                "Put the text in quotes if the number sign belongs to it; else end the sentence with a full stop.",
            )


def _prose(library: Library) -> Iterator[Prose]:
    if library.shop is not None:
        for message in library.shop.safety.values():
            yield from prose_of_message(message)
    for procedure in library.procedures.values():
        yield from prose_of(procedure)
