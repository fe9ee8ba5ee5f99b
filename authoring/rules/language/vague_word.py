"""A word leaves open how much, or how well.

What a senior technician calls sufficient, an apprentice has to guess.
Say a quantity with its source, a thing that can be seen or felt, or leave the word out.
What a checkpoint finds is described, and may be said in such words; what a step asks for may not.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] properly.   #! vague-word
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] until a white [rag] stays white.
        with: [rag]
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
from authoring.model.stretch import stretch
from authoring.model.texts import prose_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L5",)

# Our own list; words that say how much or how well without a measure.
_VAGUE = re.compile(
    r"\b(?:properly|sufficient(?:ly)?|adequate(?:ly)?|appropriate(?:ly)?|suitabl[ey]|reasonabl[ey]|carefully|"
    r"as (?:necessary|required|needed|appropriate)|if (?:necessary|required|needed)|approximately|roughly|about right|"
    r"a (?:little|bit|few)|some more|enough(?! to\b)|fairly|normally|usually|regularly|periodically|firmly|slightly|"
    r"and so on|etc)\b",
    re.IGNORECASE,
)
_ASKS = frozenset({"step", "say", "avoidance", "condition"})


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each vague word in a text that asks for something."""
    for prose in prose_of(procedure):
        if prose.part in _ASKS:
            for match in _VAGUE.finditer(prose.text):
                yield Fault(
                    f'"{match[0]}" leaves open how much, or how well.',
                    stretch(prose, match.start(), match.end()),
                    "State a value, or what is seen or felt when it is right.",
                )
