"""A signal word is typed into a text.

DANGER, WARNING, CAUTION and NOTICE are worked out from harm, severity and likelihood,
because the same word means an injury in one standard and damage in another.
A typed word can contradict the one on the page, and a warning inside a step is no safety message at all:
it gets no sign, no place before the step, and no place on the page of hazards.
A word in quotation marks is a label on the machine and is left alone.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: "Caution: the pipe is hot. Wipe the [drop-box] dry with a [rag]."   #! typed-signal-word
        with: [rag]
        do:
          - clean: drop-box
```

In a safety message.

```yaml shop
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: WARNING - the exhaust pipe is hot.   #! typed-signal-word
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the plate "DANGER" on the [drop-box] dry with a [rag].
        safety: [hot-pipe]
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
from authoring.model.signal_word import ALL_WORDS
from authoring.model.stretch import stretch
from authoring.model.texts import Prose, prose_of, prose_of_message
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S1", "S3")

_WORDS = "|".join(sorted(ALL_WORDS))
_QUOTED = re.compile(r"“[^”]*”|\"[^\"]*\"|„[^“]*“")
_IN_CAPITALS = re.compile(rf"\b(?:{_WORDS})\b")
# At the start in small letters only before a mark: “Notice the mark” and “Warning lamp” are plain words.
_AT_START = re.compile(rf"[\s*_]*({_WORDS})[\s*_]*(?:[:!.,–—]|-\s)", re.IGNORECASE)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each signal word in the prose of the library."""
    for prose in _prose(library):
        yield from _in_text(prose)


def _prose(library: Library) -> Iterator[Prose]:
    if library.shop is not None:
        for message in library.shop.safety.values():
            yield from prose_of_message(message)
    for procedure in library.procedures.values():
        yield from prose_of(procedure)


def _in_text(prose: Prose) -> Iterator[Fault]:
    found = {match.span() for match in _IN_CAPITALS.finditer(prose.text)}
    opening = _AT_START.match(prose.text)
    if opening is not None:
        found.add(opening.span(1))
    quoted = [match.span() for match in _QUOTED.finditer(prose.text)] if found else []
    for start, end in sorted(found):
        # A tip that opens with such a word is told as a caution in a tip.
        told_as_advice = prose.is_advice and opening is not None and opening.start(1) == start
        if told_as_advice or any(first <= start < last for first, last in quoted):
            continue
        yield Fault(
            f'The signal word "{prose.text[start:end]}" is typed; it is worked out from what a safety message states.',
            stretch(prose, start, end),
            "Leave the word out; state harm, severity and likelihood in a safety message and list it at the step.",
        )
