"""The customer decides an option, and no step asks about it before it counts.

Halfway through the job somebody reads "only with the raised hose", and the customer has gone home.
An option that the customer decides is asked about by an `ask` step before the first step that depends on it, for the
same machines; a step that tells the customer of the option, or a condition of the procedure that names it in
brackets, does as well.

Wrong:

```yaml procedure
options:
  wax:   #! option-not-asked
    name: wax on the drop box
    question: Does the machine work near the sea?
    decided-by: customer
    values: {bare: left bare, waxed: waxed}
sections:
  - title: Wipe
    steps:
      - step: Clean the [drop-box].
        when: {wax: waxed}
        do:
          - clean: drop-box
```

Right:

```yaml procedure
options:
  wax:
    name: wax on the drop box
    question: Does the machine work near the sea?
    decided-by: customer
    values: {bare: left bare, waxed: waxed}
sections:
  - title: Wipe
    steps:
      - step: Ask the customer about the [wax].
        do:
          - ask: {what: wax, who: customer}
      - step: Clean the [drop-box].
        when: {wax: waxed}
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.applicability import of_procedure
from authoring.model.brackets import brackets
from authoring.model.changes import Option
from authoring.model.course import Act, acts
from authoring.model.fitments import together
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Step
from authoring.model.specification import When
from authoring.rules.rule import Fault

# It may have been asked before the machine came in; the author then says so in a condition.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("A1",)
ABOUT = ("option",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each option of the customer's that some machine comes to unasked."""
    vehicle = library.scope(procedure).vehicle
    options = [one for one in procedure.options.values() if one.decided_by == "customer"]
    if vehicle is None or not options:
        return
    named = {one.name for condition in procedure.conditions or () for one in brackets(condition.so)}
    course = acts(procedure, library)
    for option in options:
        asking = [act for act in course if _asks(act, option)]
        for place, when, step in () if option.id in named else _uses(option, procedure):
            asked = [act.when for act in asking if act.place < place]
            missing = without(vehicle, procedure.covers, [when], asked)
            if missing is not None:
                yield _fault(option, step, asking)
                break


def _asks(act: Act, option: Option) -> bool:
    if option.id not in act.action.what:
        return False
    kind = act.action.kind.name
    return kind == "ask" or (kind == "tell" and act.action.details.get("who") == "customer")


def _uses(option: Option, procedure: Procedure) -> Iterator[tuple[int, When, Step | None]]:
    """Yield (number of the step, its condition, the step) for each step that depends on an option.

    Where only a choice, a value or a modification does, the end of the job stands for it.
    """
    found = False
    place = -1
    for place, (section, step) in enumerate(procedure.steps()):
        when = together(procedure.covers, section.when, step.when)
        if option.id in when:
            found = True
            yield place, when, step
    if not found and any(option.id in one.when for one in of_procedure(procedure)):
        yield place + 1, procedure.covers, None


def _fault(option: Option, step: Step | None, asking: Sequence[Act]) -> Fault:
    when = " before it counts for some machine" if asking else ""
    return Fault(
        f'The customer decides the option "{option.id}", but no step asks about it{when}.',
        option.where.span,
        f"Add an earlier step with ask: {{what: {option.id}, who: customer}}.",
        () if step is None else (Related(step.where.span, "depends on it"),),
    )
