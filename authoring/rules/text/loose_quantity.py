"""A number with a unit stands loose in a text.

A number that is typed into prose has no source, is not shown in the shop's second unit,
and stays behind when the value changes where it is stated.
State it once under `values`, with its source, and name it in brackets; a torque and a window are printed by themselves.
This covers every text of a procedure and of the safety messages, titles included, but not the reason of a revision,
which may well say what a value was before.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] and wait 5 min.   #! loose-quantity
        why: Oil that stands over 3 mm high hides the seam.   #! loose-quantity
        do:
          - clean: drop-box
```

Right:

```yaml procedure
values:
  soak: {name: settling time, value: 5 min, source: plate, at: line 7}
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] and wait [soak].
        why: Oil that stands high hides the seam; step 2 and 3 bolts stay as they are.
        do:
          - clean: drop-box
          - wait: soak
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain

from authoring.diagnostics.diagnostic import Severity
from authoring.model.brackets import BRACKET
from authoring.model.library import Library
from authoring.model.texts import Prose, headings_of, prose_of, prose_of_message
from authoring.quantities.loose import find_loose
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A5", "T1", "X2", "N13")

_DIGIT = re.compile(r"[0-9½¼¾⅛⅜⅝⅞]")
_NAMED = 'State it under "values" with its source, and name it in brackets.'
_SHARED = "Say it without the number, or state the message in the procedure, where a value can be named in brackets."


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each number with a unit in the texts of procedures and of the shop's safety messages."""
    for procedure in library.procedures.values():
        for prose in chain(headings_of(procedure), prose_of(procedure)):
            if prose.part not in {"reason", "trial"}:
                yield from _loose(prose, _NAMED)
    for message in library.shop.safety.values() if library.shop is not None else ():
        for prose in prose_of_message(message):
            yield from _loose(prose, _SHARED)


def _loose(prose: Prose, cure: str) -> Iterator[Fault]:
    text = prose.text
    if not _DIGIT.search(text):
        return
    bare = BRACKET.sub(lambda match: " " * len(match[0]), text)
    for start, end in find_loose(bare):
        found = text[start:end]
        nth = text[:start].count(found)
        span = prose.where.find(found, *prose.keys, nth=nth)
        yield Fault(f'The quantity "{" ".join(found.split())}" stands loose in the text.', span, cure)
