"""An option is decided, and nothing in the job depends on it.

Somebody is asked a question whose answer changes nothing; or the step that was to follow from it is missing.
What follows from an option says so with `when`; two values that no `when` tells apart are one value.

Wrong:

```yaml procedure
options:
  wax:   #! option-without-effect
    name: wax on the drop box
    question: Does the machine work near the sea?
    decided-by: customer
    values: {bare: left bare, waxed: waxed}
```

Two of three values come to the same.

```yaml procedure
options:
  wax:
    name: wax on the drop box
    question: Does the machine work near the sea?
    decided-by: customer
    values:
      bare: left bare
      thin: thin wax
      thick: thick wax   #! option-without-effect
sections:
  - title: Wipe
    steps:
      - step: Clean the [drop-box].
        when: {wax: [thin, thick]}
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
      - step: Clean the [drop-box].
        when: {wax: waxed}
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.applicability import of_procedure
from authoring.model.changes import Option
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("A6", "V1")
ABOUT = ("option",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each option that no condition names, and for each value that no condition tells apart."""
    for option in procedure.options.values():
        named = [one.when[option.id] for one in of_procedure(procedure) if option.id in one.when]
        if not named:
            yield Fault(
                f'Nothing in this procedure depends on the option "{option.id}".',
                option.where.span,
                f'Name it under "when" of what follows from it, such as when: {{{option.id}: {_some(option)}}}.',
            )
        else:
            yield from _alike(option, named)


def _alike(option: Option, named: list[tuple[str, ...]]) -> Iterator[Fault]:
    first: dict[tuple[bool, ...], str] = {}
    for value in option.values:
        effect = tuple(value in values for values in named)
        other = first.setdefault(effect, value)
        if other != value:
            yield Fault(
                f'The values "{other}" and "{value}" of the option "{option.id}" come to the same.',
                option.where.key("values", value),
                'Leave one of them out, or say with "when" what is done for one of them alone.',
                (Related(option.where.key("values", other), "the other value"),),
            )


def _some(option: Option) -> str:
    return next(iter(option.values))
