"""A source has no edition.

Documents change; without the edition nobody can tell whether a value is still in force.
The edition, the issue or the date on the document will do.
Common practice is no document and has none.

Wrong:

```yaml equipment
sources:
  plate: {title: Data plate notes, kind: maker}   #! source-without-edition
```

Right:

```yaml equipment
sources:
  plate: {title: Data plate notes, edition: "2", kind: maker}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Source
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A5", "C6")


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each document without an edition, the shop's first."""
    if library.shop is not None:
        yield from _without(library.shop.sources)
    for equipment in library.equipment.values():
        yield from _without(equipment.sources)


def _without(sources: Mapping[str, Source]) -> Iterator[Fault]:
    for source in sources.values():
        if source.edition is None and source.kind != "common-practice":
            cure = 'Add "edition: " with the edition, issue or date that stands on it.'
            yield Fault(f'The source "{source.id}" has no edition.', source.where.span, cure)
