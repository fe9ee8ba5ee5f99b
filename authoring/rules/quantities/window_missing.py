"""Something is measured, but no window is stated for it.

A reading without a window is a number on a page; the reader cannot tell good from bad.
A measurement names a value under `value`, or measures a part choice whose parts state their sizes.

Wrong:

```yaml procedure
sections:
  - title: Measure
    steps:
      - step: Measure the [level-plug].
        do:
          - measure:   #! window-missing
              what: level-plug
              outcomes:
                - {found: It is long enough., then: go-on}
                - {found: It is too short., then: stop}
```

Right:

```yaml procedure
values:
  plug-length: {name: length of the level plug, value: at least 21.0 mm, source: bench-book, at: page 4}
sections:
  - title: Measure
    steps:
      - step: Measure the [level-plug].
        do:
          - measure:
              what: level-plug
              value: plug-length
              outcomes:
                - {found: It is long enough., then: go-on}
                - {found: It is too short., then: stop}
```

A part choice brings the sizes of its parts.

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: Which brake does the machine have?
    dimensions:
      width: {name: width, decides: true}
    parts:
      - part: plug-ring
        when: {brake: drum}
        sizes: {width: {value: 9.0 ± 0.3 mm, source: bench-book, at: page 30}}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        sizes: {width: {value: 13.0 ± 0.3 mm, source: bench-book, at: page 30}}
        tell: It is wide.
sections:
  - title: Measure
    steps:
      - step: Measure the [ring].
        do:
          - measure:
              what: ring
              outcomes:
                - {found: The width lies inside the window., then: go-on}
                - {found: It is another one., then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library, Scope
from authoring.model.procedure import Action, Choice, ChoicePart, Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("H2",)
ABOUT = ("measured",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each measurement that has neither a value nor a choice with sizes."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            if action.kind.name == "measure" and "value" not in action.roles and not _brings_its_own(action, scope):
                yield Fault(
                    "This measurement has no window to compare the reading with.",
                    action.where.span,
                    'State the window under "values" with its source, and name it here under "value".',
                )


def _brings_its_own(action: Action, scope: Scope) -> bool:
    known = [scope.things[name].thing for name in action.what if name in scope.things]
    if len(known) < len(action.what):
        return True  # an unknown name is told elsewhere
    return all(isinstance(one, Choice) and all(map(_has_size, one.parts)) for one in known)


def _has_size(part: ChoicePart) -> bool:
    return part.stated is not None or bool(part.sizes)
