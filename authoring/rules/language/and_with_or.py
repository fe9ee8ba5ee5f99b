"""One condition holds an "and" together with an "or".

"If the ring is worn and the plug is loose or dented" has two readings, and two people take one each.
Make two steps of it, or outcomes of a checkpoint, or leave one of the two words out.
(AND and OR apart: DOE-STD-1029, from memory.)

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: If the [drop-box] is wet and warm or dusty, wipe it.   #! and-with-or
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: If the [drop-box] is wet or dusty, wipe it.
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

_ASKS = frozenset({"step", "say", "else", "manner", "optional", "look"})
# A condition that leads lasts to the first comma that no "and" or "or" follows; behind the command, a comma may part
# it from another command. "Until" is left alone: what follows its "and" is a command as often as not.
_CONDITION = re.compile(
    r"^(?:if|when|unless|in case)\b(?:[^,]|,(?= (?:and|or)\b))*|(?<= )(?:if|when|unless|in case)\b[^,]*",
    re.IGNORECASE,
)
# "Between two and three" and "one or more" count; they join nothing.
_COUNTED = re.compile(
    r"\b(?:one or (?:more|both|two)|more or less|between [^,]*? and|both [^,]*? and)\b", re.IGNORECASE
)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each condition in a text that asks for something and mixes the two words."""
    for prose in prose_of(procedure):
        if prose.part not in _ASKS:
            continue
        for sentence in sentences(prose.text):
            for match in _CONDITION.finditer(sentence.text):
                words = set(_COUNTED.sub(" ", match[0]).lower().split())
                if {"and", "or"} <= words:
                    start = sentence.start + match.start()
                    yield Fault(
                        'This condition holds both "and" and "or", which can be read in two ways.',
                        stretch(prose, start, start + len(match[0].rstrip())),
                        "Make two steps of it, or outcomes of a checkpoint.",
                    )
