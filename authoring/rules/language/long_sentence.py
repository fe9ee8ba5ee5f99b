"""A sentence is too long to be kept in mind at the bench.

An instruction is read, then done; what does not fit into one look is done from memory.
What asks for something, be it a step, its manner or what follows from a finding, has at most 20 words in a sentence,
what explains at most 25 (ASD-STE100, rules 5.1 and 6, as restated).
A name in brackets counts as one word.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] at the top, at an end, at an edge, in a gap, on a rib, on a lid. #! long-sentence
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry all the way round. Begin at the top.
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.sentences import sentences
from authoring.model.stretch import stretch
from authoring.model.texts import prose_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L4",)

_ASKS = frozenset({"step", "say", "else", "manner", "until", "look"})
_EXPLAINS = frozenset({"tip", "why", "job", "intro", "optional", "safe-to-stop", "change"})
_MOST = dict.fromkeys(_ASKS, 20) | dict.fromkeys(_EXPLAINS, 25)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each sentence with more words than its kind may have."""
    for prose in prose_of(procedure):
        most = _MOST.get(prose.part)
        if most is None:
            continue
        for sentence in sentences(prose.text):
            if sentence.words > most:
                yield Fault(
                    f"This sentence has {sentence.words} words; here {most} are the most.",
                    stretch(prose, sentence.start, sentence.start + len(sentence.text)),
                    "Make two sentences of it, or two steps.",
                )
