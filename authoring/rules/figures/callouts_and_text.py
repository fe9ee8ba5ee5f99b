"""The numbers on a figure and the text beside it do not match.

A number that no step names is a riddle; numbers named out of order send the eye to and fro; the same thing numbered
twice makes the reader look for a difference.
A picture that something is graded against shows the same thing in each of its states, a number for each.
What counts is what the steps that show the figure say, in reading order: their caution blocks, their text, the parts
of a choice they name, their outcomes, their reason and their tip.
A figure that no step shows is told elsewhere.

Wrong:

```yaml procedure
figures:
  box:
    file: drop-box.svg
    title: The drop box
    alt: The level plug is low on the left face.
    callouts:
      - {on: level-plug, across: 20, down: 60}   #! callouts-and-text
      - {on: drop-box, across: 50, down: 50}
      - {on: drop-box, across: 70, down: 50}   #! callouts-and-text
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        figures: [box]
        with: [rag]
        do:
          - clean: drop-box
```

Named out of order.

```yaml procedure
figures:
  box:
    file: drop-box.svg
    title: The drop box
    alt: The level plug is low on the left face.
    callouts:
      - {on: level-plug, across: 20, down: 60}
      - {on: drop-box, across: 50, down: 50}   #! callouts-and-text
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] and the [level-plug] dry with a [rag].
        figures: [box]
        with: [rag]
        do:
          - clean: [drop-box, level-plug]
```

Right:

```yaml procedure
figures:
  box:
    file: drop-box.svg
    title: The drop box
    alt: The level plug is low on the left face.
    callouts:
      - {on: drop-box, across: 50, down: 50}
      - {on: level-plug, across: 20, down: 60}
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] and the [level-plug] dry with a [rag].
        figures: [box]
        with: [rag]
        do:
          - clean: [drop-box, level-plug]
```

A picture to grade wear against.

```yaml procedure
figures:
  wear:
    file: drop-box.svg
    title: The plug, sound and worn
    alt: The first plug has sharp corners, and those of the second are round.
    callouts:
      - {on: level-plug, across: 20, down: 60}
      - {on: level-plug, across: 70, down: 60}
sections:
  - title: Look
    steps:
      - step: Look at the corners of the [level-plug].
        figures: [wear]
        do:
          - inspect:
              what: level-plug
              against: wear
              outcomes:
                - {found: They are sharp., like: 1, then: go-on}
                - {found: They are round., like: 2, then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.brackets import brackets
from authoring.model.figure import Callout, Figure
from authoring.model.in_force import placed_by_policy
from authoring.model.library import Library, Scope
from authoring.model.procedure import Procedure, Step
from authoring.model.texts import prose_of_message, prose_of_step
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("F1",)
ABOUT = ("figure",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each callout that is told twice, named by no step, or named too early."""
    things = library.scope(procedure).things
    graded = {action.roles.get("against") for _, step in procedure.steps() for action in step.actions}
    for figure in procedure.figures.values():
        shown = [step for _, step in procedure.steps() if figure.id in step.figures]
        first: dict[str, Callout] = {}
        for callout in figure.callouts:
            earlier = first.setdefault(callout.on, callout)
            if earlier is not callout and figure.id not in graded:
                yield _twice(callout, earlier, figure)
        if shown:
            known = [callout for name, callout in first.items() if name in things]  # any other is an unknown name
            yield from _against(known, figure, _named(shown, library.scope(procedure)))


def _named(steps: list[Step], scope: Scope) -> dict[str, tuple[int, Step]]:
    """Return where in reading order each name first stands in what the steps say."""
    found: dict[str, tuple[int, Step]] = {}
    for step in steps:
        called = (scope.safety[name] for name in step.safety if name in scope.safety)
        messages = (*called, *placed_by_policy(scope.procedure, scope.library).get(step.id, ()))
        said = [prose.text for message in messages for prose in prose_of_message(message)]
        said += [step.text, *(prose.text for prose in prose_of_step(step))]
        for bracket in (bracket for text in said for bracket in brackets(text)):
            choice = scope.procedure.choices.get(bracket.name)
            for name in (bracket.name, *(part.part for part in choice.parts)) if choice else (bracket.name,):
                found.setdefault(name, (len(found), step))
    return found


def _against(callouts: list[Callout], figure: Figure, named: dict[str, tuple[int, Step]]) -> Iterator[Fault]:
    for callout in callouts:
        if callout.on not in named:
            number = figure.callouts.index(callout) + 1
            yield Fault(
                f'Number {number} of the figure "{figure.id}" points at "{callout.on}", '
                "but no step that shows the figure names it.",
                callout.where.of("on"),
                "Name it in such a step, or leave the number out.",
            )
    for one, later in pairwise([callout for callout in callouts if callout.on in named]):
        if named[later.on][0] < named[one.on][0]:
            yield _too_early(later, one, figure, named[later.on][1])


def _too_early(later: Callout, one: Callout, figure: Figure, step: Step) -> Fault:
    numbers = figure.callouts.index(later) + 1, figure.callouts.index(one) + 1
    return Fault(
        f'In the text "{later.on}" comes before "{one.on}", '
        f'but on the figure "{figure.id}" it is number {numbers[0]} and the other number {numbers[1]}.',
        later.where.of("on"),
        "List the callouts in the order in which the steps name them.",
        (Related(step.where.of("step"), "named here first"),),
    )


def _twice(callout: Callout, earlier: Callout, figure: Figure) -> Fault:
    return Fault(
        f'The figure "{figure.id}" has two numbers for "{callout.on}".',
        callout.where.of("on"),
        "Keep one of them.",
        (Related(earlier.where.of("on"), "the other one"),),
    )
