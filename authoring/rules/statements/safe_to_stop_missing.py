"""A long job does not say where it is safe to stop.

A shift ends, a part is missing, the telephone rings: a long job is left half done, and not every half may be left.
A job of two hours or more, or of thirty steps or more, has at least one section with `safe-to-stop`,
which says how the machine is left until the next day.

Wrong:

```yaml procedure
time: 2 h   #! safe-to-stop-missing
```

Right:

```yaml procedure
time: 2 h
sections:
  - title: Wipe
    safe-to-stop: The box is shut, and nothing is loose.
    steps:
      - do: [{clean: drop-box}]
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

# Where a job may be left is for its author to judge, so this asks and does not forbid.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("H5",)

_LONG = 2 * 3600
_MANY = 30


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for a long procedure none of whose sections says that it is safe to stop."""
    if any(section.safe_to_stop is not None for section in procedure.sections):
        return
    # Of several methods one is done.
    steps = sum(step.method is None or step.method.is_first for _, step in procedure.steps())
    cure = 'Add "safe-to-stop" to the section after which the machine may be left, with how it is left.'
    if procedure.time is not None and _seconds(procedure) >= _LONG:
        message = f"This job takes {procedure.time.text}, and does not say where it is safe to stop."
        yield Fault(message, procedure.where.of("time"), cure)
    elif steps >= _MANY:
        message = f"This job has {steps} steps, and does not say where it is safe to stop."
        yield Fault(message, procedure.where.key("sections"), cure)


def _seconds(procedure: Procedure) -> float:
    time = procedure.time
    longest = (
        None if time is None else next((end for end in (time.high, time.nominal, time.low) if end is not None), None)
    )
    return 0.0 if time is None or longest is None else float(longest * time.unit.factor)
