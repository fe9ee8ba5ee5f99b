"""An action's verb does not stand in the step's text.

If the text says "loosen" and the data say "remove", one of the two is wrong: the reader leaves the bolt in,
and everything that is proved assumes it is out.
Each action has a few words of its own, and one of them must stand in the text.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Paint the [drop-box].
        do:
          - clean: drop-box   #! verb-mismatch
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Wipe the [drop-box] dry.
        do:
          - clean: drop-box
```

A verb of two words may stand around its thing.

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Take the [level-plug] out.
        safety: [hot-pipe]
        with: [spanner]
        do:
          - remove: level-plug
      - step: Start the [level-plug] by hand.
        do:
          - start: level-plug
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import quoted
from authoring.model.brackets import words_only
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault
from authoring.source.wording import either

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L1", "N11")


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each action none of whose words stands in its step's written text."""
    for _, step in procedure.steps():
        text = words_only(step.text) if step.written else ""
        for action in step.actions:
            if not text or _verbs(action.kind.words).search(text):
                continue
            yield Fault(
                f'The text has no word for the action "{action.kind.name}".',
                action.where.span,
                f"Say it in the text with {either([quoted(word) for word in action.kind.words])},"
                " or use the action that the text describes.",
                (Related(step.where.of("step"), "the text of this step"),),
            )


@cache
def _verbs(words: tuple[str, ...]) -> re.Pattern[str]:
    """Return what finds any of the verbs; the parts of one may stand apart inside a sentence."""
    apart = r"\b[^.;:]*?\b"
    ways = (rf"\b{apart.join(word.split())}\b" for word in words)
    return re.compile("|".join(ways), re.IGNORECASE)
