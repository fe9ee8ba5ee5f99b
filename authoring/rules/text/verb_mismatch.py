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
from authoring.diagnostics.words import joined, quoted
from authoring.model.brackets import words_only
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L1", "N11")


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each action none of whose words stands in its step's written text."""
    for _, step in procedure.steps():
        if not step.written:
            continue
        text = words_only(step.text)
        words = frozenset(_WORD.findall(text.lower()))
        for action in step.actions:
            if any(_says(text, words, verb) for verb in action.kind.words):
                continue
            yield Fault(
                f'The text has no word for the action "{action.kind.name}".',
                action.where.span,
                f"Say it in the text with {joined([quoted(word) for word in action.kind.words], 'or')},"
                " or use the action that the text describes.",
                (Related(step.where.of("step"), "the text of this step"),),
            )


_WORD = re.compile(r"\w+")


def _says(text: str, words: frozenset[str], verb: str) -> bool:
    """Tell whether a text says a verb; the parts of one, such as take off, may stand apart inside a sentence."""
    parts = verb.split()
    if not words.issuperset(parts):
        return False
    return len(parts) == 1 or _apart(verb).search(text) is not None


@cache
def _apart(verb: str) -> re.Pattern[str]:
    apart = r"\b[^.;:]*?\b"
    return re.compile(rf"\b{apart.join(verb.split())}\b", re.IGNORECASE)
