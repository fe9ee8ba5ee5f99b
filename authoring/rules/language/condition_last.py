"""A condition stands behind the instruction it belongs to.

Hands are quicker than eyes: who reads "Replace the ring" has begun before "if it is worn" is read.
Put the condition first and cut it off by a comma, or make it an outcome of a checkpoint.
(ASD-STE100, rule 5.4, as restated; the condition first: DOE-STD-1029, from memory.)

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] if it is wet.   #! condition-last
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: If the [drop-box] is wet, wipe it.
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.sentences import sentences
from authoring.model.stretch import stretch
from authoring.model.texts import prose_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L2",)

# "Look if", "see if" and "feel whether" ask a question, and "as if" compares.
_LAST = re.compile(r"(?<!\blook)(?<!\bsee)(?<!\bcheck)(?<!\bas)(?<!\beven) \b(if|when|unless|in case)\b", re.IGNORECASE)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each condition that follows its instruction in a step's text."""
    for prose in prose_of(procedure):
        if prose.part != "step":
            continue
        for sentence in sentences(prose.text):
            match = _LAST.search(sentence.text)
            if match is not None:
                start = sentence.start + match.start(1)
                yield Fault(
                    f'The condition "{match[1]} ..." stands behind what is to be done.',
                    stretch(prose, start, sentence.start + len(sentence.text)),
                    "Begin with the condition and a comma, or make it an outcome of a checkpoint.",
                )
