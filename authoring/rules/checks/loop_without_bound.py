"""A way leads back, and nothing says how often it may be gone or what follows then.

Who goes round for the fourth time wears out a thread and an afternoon, and nobody has told them to stop.
What leads back to a step that was done, and what is repeated until something is so,
says with `at-most` how often, and with `else` what follows when that did not help.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - id: wipe
        step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box
        repeat: {until: The rag stays white.}   #! loop-without-bound
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: go-to, to: wipe}   #! loop-without-bound
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - id: wipe
        step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box
        repeat: {until: The rag stays white., at-most: 4, else: Ask the workshop lead for a cleaner.}
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: go-to, to: wipe, at-most: 2, else: Look for the leak above it.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined
from authoring.model.course import meet, seen, targets
from authoring.model.demands import Repeat
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L8", "R2", "N8", "N11")
ABOUT = ("way-back",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each way back, and each repetition, that lacks its bound or what follows then."""
    yield from _ways_back(procedure, library)
    for section in procedure.sections:
        yield from _repeated(section.repeat)
        for step in section.steps:
            yield from _repeated(step.repeat)


def _ways_back(procedure: Procedure, library: Library) -> Iterator[Fault]:
    known = targets(procedure)
    for one in seen(procedure):
        outcome = one.outcome
        target = known.get(outcome.to) if outcome.then == "go-to" and outcome.to is not None else None
        lacks = _lacking(bounded=outcome.at_most is not None, told=outcome.otherwise is not None)
        if target is None or not lacks:
            continue
        # What is noticed anywhere in a section leads back when it is noticed at the section's last step.
        back = target.first <= one.last if one.step is not None else target.first < one.last
        if back and meet(procedure, library, one.when, target.when):
            yield Fault(
                f'This leads back to "{outcome.to}" and does not say {lacks}.',
                outcome.where.of("to"),
                f"Add {_ADD}.",
                (Related(target.where.of("id"), "it leads back to here"),),
            )


def _repeated(repeat: Repeat | None) -> Iterator[Fault]:
    if repeat is None or repeat.until is None:
        return
    bounded = repeat.at_most is not None or repeat.times is not None
    lacks = _lacking(bounded=bounded, told=repeat.otherwise is not None)
    if lacks:
        yield Fault(
            f"This is repeated until something is so, and does not say {lacks}.", repeat.where.span, f"Add {_ADD}."
        )


_ADD = '"at-most" with a number, and "else" with what follows when that did not help'


def _lacking(*, bounded: bool, told: bool) -> str:
    lacks = [
        *([] if bounded else ["how often at most"]),
        *([] if told else ["what follows when that did not help"]),
    ]
    return joined(lacks, "or")
