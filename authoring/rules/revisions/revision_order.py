"""The revisions do not follow one another.

The newest stands first, each letter follows the one below it, the list goes down to A, and no date lies before
that of an older revision; after Z comes AA.
A gap means that a revision is lost, and with it the reason for what changed.

Wrong:

```yaml procedure
revisions:
  - {revision: C, date: 2026-05-02, author: mara, approver: tobi, reason: New torque.}   #! revision-order
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```

A date that lies before the revision it follows.

```yaml procedure
revisions:
  - {revision: B, date: 2026-03-02, author: mara, approver: tobi, reason: New torque.}   #! revision-order
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```

Right:

```yaml procedure
revisions:
  - {revision: B, date: 2026-05-02, author: mara, approver: tobi, reason: New torque.}
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.dates import day
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Revision
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("C1",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for a list the wrong way up, else for each letter and date that does not follow."""
    revisions = procedure.revisions
    numbers = [_number(one.letter) for one in revisions]
    if len(numbers) > 1 and all(above < below for above, below in pairwise(numbers)):
        yield Fault(
            "The revisions run from the oldest to the newest.",
            revisions[0].where.of("revision"),
            "Put the newest first.",
            (Related(revisions[-1].where.of("revision"), "the newest"),),
        )
        return
    for newer, older in pairwise(revisions):
        yield from _pair(newer, older)
    if numbers[-1] != 1:
        letter = revisions[-1].letter
        message = f"The revisions go down to {letter} only; the first of all is A."
        yield Fault(message, revisions[-1].where.of("revision"), "List all revisions, down to A.")


def _pair(newer: Revision, older: Revision) -> Iterator[Fault]:
    if _number(newer.letter) != _number(older.letter) + 1:
        yield Fault(
            f"Revision {newer.letter} stands above revision {older.letter}, where {_after(older.letter)} belongs.",
            newer.where.of("revision"),
            "Put the newest first, and list every revision once.",
            (Related(older.where.of("revision"), "the one below"),),
        )
        return
    later, earlier = day(newer.date), day(older.date)
    if later is not None and earlier is not None and later < earlier:
        yield Fault(
            f"Revision {newer.letter} is dated {later}, before revision {older.letter} of {earlier}.",
            newer.where.of("date"),
            "Correct one of the two dates.",
            (Related(older.where.of("date"), f"the date of revision {older.letter}"),),
        )


def _number(letter: str) -> int:
    """Return 1 for A, 26 for Z, 27 for AA."""
    number = 0
    for one in letter:
        number = number * 26 + ord(one) - ord("A") + 1
    return number


def _after(letter: str) -> str:
    """Return the letter that follows: B after A, AA after Z, BA after AZ."""
    number, letters = _number(letter) + 1, ""
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
