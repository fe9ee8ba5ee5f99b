"""A warning stands in a tip, in a reason, or in how something is done.

All three are advice, which a reader in a hurry skips.
What can hurt somebody or damage something belongs in a safety message, which stands before the step with its sign.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box
        tip: Careful, the pipe is hot.   #! caution-in-tip
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [hot-pipe]
        with: [rag]
        do:
          - clean: drop-box
        tip: Hot oil wipes off more easily.
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.stretch import stretch
from authoring.model.texts import prose_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("S3",)

# Some words warn by themselves; others only when a mark cuts them off: “Hot oil drains faster” is plain advice.
_ALONE = r"beware|be careful|take care|watch out|look out|danger of|dangerous|risk of|mind your"
_CUT_OFF = r"danger|warning|caution|notice|attention|careful"
_EXCLAIMED = r"hot|sharp|slippery|poison|poisonous"
_OPENING = re.compile(
    rf"[\s*_]*((?:{_ALONE})\b|(?:{_CUT_OFF})(?=[\s*_]*(?:[:!.,–—]|-\s))|(?:{_EXCLAIMED})(?=[\s*_]*[:!.])"
    r"|careful(?=\s+(?:with|when|not|of|as|here|there)\b))",
    re.IGNORECASE,
)

_SORTS = {"tip": "tip", "why": "reason", "manner": "manner of working"}


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each tip, reason and manner that opens with a word of warning."""
    for prose in prose_of(procedure):
        opening = _OPENING.match(prose.text) if prose.is_advice else None
        if opening is not None:
            sort = _SORTS[prose.part]
            yield Fault(
                f'This {sort} opens with "{opening[1]}": it warns, but a {sort} is read as advice.',
                stretch(prose, *opening.span(1)),
                'Make it a safety message and list it under "safety" of the step.',
            )
