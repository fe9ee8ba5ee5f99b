"""Somebody wrote the newest revision who may not write procedures.

Who may write is the decision of the shop, stated at each of its people.
Earlier revisions are left alone, because rights change and what was lawful then stays so.

Wrong:

```yaml shop
people:
  mara: {name: Mara Quill, role: senior technician, may: [approve]}
  tobi: {name: Tobias Renn, role: workshop lead, may: [write, approve]}
```

```yaml procedure
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}   #! may-not-write
```

Right:

```yaml shop
people:
  mara: {name: Mara Quill, role: senior technician, may: [write]}
  tobi: {name: Tobias Renn, role: workshop lead, may: [approve]}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("C3",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault when the author of the newest revision lacks the right; one unknown is told elsewhere."""
    revision = procedure.revision
    person = library.shop.people.get(revision.author) if library.shop is not None else None
    if person is not None and "write" not in person.may:
        yield Fault(
            f"{person.name} wrote revision {revision.letter}, but may not write procedures.",
            revision.where.of("author"),
            'Let somebody who may write do it, or add "write" to what this person may do in the shop file.',
            (Related(person.where.of("may"), "what this person may do"),),
        )
