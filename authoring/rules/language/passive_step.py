"""A step tells how things are instead of what to do.

Who reads "the plug is to be tightened" has to work out who tightens it, and when.
A step begins with its verb, as one speaks to the person at the bench: tighten, look, wait.
What stands before the verb is a condition or a place, cut off by a comma; what explains goes into `why` or `tip`.
(Imperative and active voice: ASD-STE100, rule 5.3 and section 3, as restated; verb first: DOE-STD-1029, from memory.)

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry. The vent must be kept clean.   #! passive-step
        do:
          - clean: drop-box
      - step: You wipe the [drop-box] dry.   #! passive-step
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry. Keep the cloth away from the vent.
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
from authoring.model.texts import Prose, prose_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L1", "L4")

_ASKS = frozenset({"step", "say", "else", "manner", "look"})

# No imperative begins with one of these, with a name, or with a form in -ing that nothing cuts off by a comma.
# "Bring" and "swing" have no vowel before their -ing.
_NO_VERB = re.compile(
    r"[\s*_]*(?:(\[[^\[\]\n]+\])(?!\()|"
    r"(the|an?|this|these|that|those|its|your|you|he|she|it|we|they|i|there|all(?! round)|each|every|both|no|"
    r"nobody|nothing|somebody|someone|everybody|everyone|everything)\b|"
    r"(?=[a-z]*[aeiouy][a-z]*ing\b)([a-z]+ing)\b(?=[^,.;:]*(?:[.;:]|$)))",
    re.IGNORECASE,
)
# "That" and the like before it make it a description: "mark the hose that must be renewed".
# Kept as text and compiled at the first "be", since most libraries ask for nothing by that word.
_PASSIVE = (
    r"(?i)(?<!\bthat )(?<!\bwhich )(?<!\bwhat )(?<!\bwho )"
    r"\b((?:must|should|shall|has to|have to|needs? to|is to|are to|ought to)(?: not| never| always)? be"
    r"(?: [a-z]+ly)? (?:[a-z]{2,}ed|[a-z]*(?:put|set|cut|shut|let)|held|kept|taken|driven|drawn|thrown|worn|seen|felt|"
    r"heard|hung|bent|wound|swung|brought|done|made|left|read|run))\b"
)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield one fault for each text that asks for something and describes instead of telling what to do."""
    for prose in prose_of(procedure):
        if prose.part in _ASKS:
            yield from _told(prose)


def _told(prose: Prose) -> Iterator[Fault]:
    passive = re.search(_PASSIVE, prose.text) if " be " in prose.text.lower() else None
    if passive is not None:
        yield Fault(
            f'"{" ".join(passive[1].split())}" does not say who does it, or when.',
            stretch(prose, passive.start(1), passive.end(1)),
            "Begin with the verb, as one speaks to the person at the bench: wipe, tighten, look at.",
        )
        return
    # What is said at an outcome may explain first, and a manner is often half a sentence.
    first = _NO_VERB.match(prose.text) if prose.part == "step" else None
    if first is not None:
        yield Fault(
            f'A step begins with its verb, and "{first[first.lastindex or 0]}" is none.',
            stretch(prose, first.start(first.lastindex or 0), first.end(first.lastindex or 0)),
            'Say first what to do; what explains it goes into "why" or "tip".',
        )
