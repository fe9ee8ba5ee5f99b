"""Something is run or warmed until it is colder than the air of the shop.

Running and warming make nothing colder, so the temperature never comes, and whoever waits for it overheats the thing.
Only where all windows of the value lie below the `air` that the shop states: for `heat` with the words heat or warm it
is an error, for `run` a warning, since a cooling plant may do it.
What was cooled or chilled before may be warmed to less than the air.

Wrong:

```yaml shop
air: {value: 15 to 25 °C, source: bench-book, at: page 9}
```

```yaml procedure
values:
  warm: {name: temperature of the box, value: 8 to 10 °C, source: bench-book, at: page 8}
sections:
  - title: Warm it
    steps:
      - step: Warm the [drop-box] to [warm].
        do:
          - heat: {what: drop-box, to: warm}   #! until-never-comes
```

Right:

```yaml shop
air: {value: 15 to 25 °C, source: bench-book, at: page 9}
```

```yaml procedure
values:
  warm: {name: temperature of the box, value: 80 to 100 °C, source: bench-book, at: page 8}
sections:
  - title: Warm it
    steps:
      - step: Warm the [drop-box] to [warm].
        do:
          - heat: {what: drop-box, to: warm}
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.brackets import words_only
from authoring.model.course import acts
from authoring.model.fitments import together
from authoring.model.lacking import without
from authoring.model.levels import span_of, temperature
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Step
from authoring.model.things import Shop, Window
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import interval_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N11", "V3")
ABOUT = ("heated", "set-running")

_ROLE = {"heat": "to", "run": "until"}
_COLDER = frozenset({"cool", "chill"})
_WORD = re.compile(r"\w+")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each run and warming of which some machine has no window above the coldest air of the shop."""
    scope = library.scope(procedure)
    coldest = _coldest(library.shop)
    if coldest is None or scope.vehicle is None or library.shop is None or library.shop.air is None:
        return
    cooled: set[str] = set()
    for act in acts(procedure, library):
        name = act.action.kind.name
        if name == "heat" and _makes_colder(act.doing):
            cooled.update(act.action.what)
        elif name in _ROLE and act.own and not cooled & set(act.action.what):
            value = temperature(act.action.roles.get(_ROLE[name], ""), scope)
            windows = value.windows if value is not None else ()
            never = [one for one in windows if _below(one, coldest)]
            asked = [together(act.when, one.when) for one in never]
            lack = without(scope.vehicle, procedure.covers, asked, [one.when for one in windows if one not in never])
            if never and lack is not None:
                yield Fault(
                    f"{'Warming' if name == 'heat' else 'Running'} makes nothing as cold as "
                    f'"{act.action.roles[_ROLE[name]]}": the air of the shop is warmer than that{lack.whom}.',
                    act.action.where.of(_ROLE[name]),
                    "Read the temperature and its unit again.",
                    (
                        Related(never[0].specification.where.of("value"), "the temperature"),
                        Related(library.shop.air.where.of("value"), "the air of the shop"),
                    ),
                    lack.fitments,
                    Severity.ERROR if name == "heat" else None,
                )


def _coldest(shop: Shop | None) -> Fraction | None:
    """Return the coldest air that the shop states, in K; None where none is known."""
    air = shop.air.value if shop is not None and shop.air is not None else None
    return interval_of(air).low if air is not None and air.dimension is Dimension.TEMPERATURE else None


def _below(window: Window, coldest: Fraction) -> bool:
    span = span_of(window)
    return span is not None and span.high is not None and span.high < coldest


def _makes_colder(step: Step) -> bool:
    """Tell whether the text of a step that brings something to a temperature speaks of making it colder."""
    return bool(_COLDER & set(_WORD.findall(words_only(step.text).casefold())))
