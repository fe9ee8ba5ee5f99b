"""A checkpoint does not say what follows when it is met, or when it is not.

An apprentice who finds what the page does not foresee guesses.
A checkpoint has an outcome with which the job goes on, one for what is not as it should be,
and has both for each vehicle it is for; where `critical-when` makes it a habit only, the first is enough.
An outcome that is to be put right says how, be it found by a checkpoint or noticed unasked;
one that says how often at most, says what follows then, and the other way round.

Wrong:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [level-plug].
        do:
          - inspect: {what: level-plug, outcomes: [{found: It is dry., then: go-on}]}   #! way-out-missing
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: put-right}   #! way-out-missing
```

Right:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [level-plug].
        do:
          - inspect:
              what: level-plug
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: put-right, say: Tighten it once more.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import Act, acts, seen
from authoring.model.fitments import together
from authoring.model.lacking import lack, laid_out, taken_as_all
from authoring.model.library import Library
from authoring.model.procedure import Outcome, Procedure
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R3", "L8", "N11")
ABOUT = ("checkpoint", "outcome")

_ONWARD = frozenset({"go-on", "go-to", "next-time", "do-after"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each checkpoint that lacks a good or a bad outcome, and for each outcome that says not how."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    for act in acts(procedure, library):
        if act.own and act.action.kind.checkpoint:
            yield from _of_checkpoint(act, procedure, vehicle)
    for one in seen(procedure):
        yield from _of_outcome(one.outcome)


def _of_checkpoint(act: Act, procedure: Procedure, vehicle: Equipment) -> Iterator[Fault]:
    action = act.action
    whens = [act.when, action.critical_when, *(outcome.when for outcome in action.outcomes)]
    # Where nothing can be said of the vehicles, each outcome is taken as one for all of them.
    space = laid_out(vehicle, procedure.covers, whens) or taken_as_all(vehicle)
    on = space.either(one.when for one in action.outcomes if one.then in _ONWARD)
    out = space.either(one.when for one in action.outcomes if one.then != "go-on")
    for given, asked, message, cure in (
        (on, act.when, "has no outcome with which the job goes on", "what is as it should be, with then: go-on"),
        (
            out,
            together(act.when, action.critical_when),
            "does not say what follows when it is not met",
            "what is not as it should be: put-right, do, do-after, go-to, stop or ask-customer",
        ),
    ):
        bad = space.where(asked) & ~given
        if bad:
            left = lack(space, bad, space.where(act.when))
            yield Fault(
                f"This checkpoint {message}{left.whom}.",
                action.where.span,
                f"Add an outcome for {cure}.",
                fitments=left.fitments,
            )


def _of_outcome(outcome: Outcome) -> Iterator[Fault]:
    if outcome.then == "put-right" and outcome.say is None:
        yield Fault(
            "This is to be put right, but the reader is not told how.",
            outcome.where.of("then"),
            'Say how under "say".',
        )
    if outcome.then == "go-to":
        return  # the bound of a way back is told elsewhere
    if outcome.at_most is not None and outcome.otherwise is None:
        yield Fault(
            "This says how often at most, and not what follows then.",
            outcome.where.of("at-most"),
            'Say under "else" what follows when that did not help.',
        )
    elif outcome.otherwise is not None and outcome.at_most is None:
        yield Fault(
            'This says what follows when it did not help, but not after how many times, so "else" is never reached.',
            outcome.where.of("else"),
            'Add "at-most" with a number.',
        )
