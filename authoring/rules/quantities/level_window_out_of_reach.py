"""The steps before do not let a fluid reach the temperature at which its level counts.

Whoever runs the engine until the oil has 40 °C and then reads "at 65 to 75 °C" reads a level that is wrong, or stands
there and waits for what never comes.
What the steps before bring about is followed: run until a temperature, heat to one, needed or measured at one; what
runs on makes it warmer, and what stands, rests or gets fresh fluid makes it colder.
Where the steps say nothing of the temperature, nothing is told.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
```
```yaml procedure
values:
  luke: {name: temperature after the run, value: 30 to 40 °C, source: plate, at: line 4}
  warm: {name: temperature for the level check, value: 65 to 75 °C, source: plate, at: line 5}
sections:
  - title: Fill
    steps:
      - step: Run the [engine] until the oil has [luke].
        do:
          - run: {what: engine, until: luke}
      - step: Add [box-oil] at [warm] until it runs from the hole of the [level-plug].
        do:
          - fill-to-level: {what: box-oil, at: level-plug, window: warm}   #! level-window-out-of-reach
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
```
```yaml procedure
values:
  hot: {name: temperature after the run, value: at least 70 °C, source: plate, at: line 4}
  warm: {name: temperature for the level check, value: 65 to 75 °C, source: plate, at: line 5}
sections:
  - title: Fill
    steps:
      - step: Run the [engine] until the oil has [hot].
        do:
          - run: {what: engine, until: hot}
      - step: Add [box-oil] at [warm] until it runs from the hole of the [level-plug].
        do:
          - fill-to-level: {what: box-oil, at: level-plug, window: warm}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined
from authoring.model.course import acts
from authoring.model.fitments import together
from authoring.model.levels import LevelReading, readings, spans_on
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Step
from authoring.model.runs import one_of_each, runs
from authoring.model.space import Cells
from authoring.model.warmth import Effect, Event, Warmth, events, warmth
from authoring.model.ways import Shown, Ways, ways_of
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault
from authoring.workshop.interval import Interval, quantity_of
from authoring.workshop.level_windows import Reading, WindowCheck, check_window

# A fluid cools and warms in ways that no step states.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("H2", "N11")
ABOUT = ("level",)

_ASIDE = frozenset({Reading.TOO_COLD, Reading.TOO_WARM})


class _Missed(Struct, frozen=True):
    """What stated a temperature last, what the fluid may have since, the windows, and how the nearest is missed."""

    stated: Event
    allowed: tuple[Interval, ...]
    windows: tuple[Interval, ...]
    nearest: WindowCheck


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each level reading whose windows the steps before do not let the fluid reach."""
    found = list(readings(procedure, library))
    ways = ways_of(procedure, library) if found else None
    if ways is None:
        return
    alone = len({reading.fluid for reading in found}) == 1
    course, scope = acts(procedure, library), library.scope(procedure)
    happened = {one.fluid: list(events(course, one.fluid, scope, alone=alone)) for one in found}
    for reading in found:
        before = _since([event for event in happened[reading.fluid] if _precedes(event, reading)])
        in_any_order = reading.section.free and any(event.act.section is reading.section for event in before)
        if any(event.value is not None for event in before) and not in_any_order:
            yield from _of_reading(reading, before, ways)


def _precedes(event: Event, reading: LevelReading) -> bool:
    """Tell whether an event comes before a reading; what its own step needs is the reading itself."""
    if event.act.place != reading.place:
        return event.act.place < reading.place
    actions = [one for one in reading.step.actions if one is event.act.action or one is reading.action]
    return event.effect is not Effect.MET and len(actions) > 1 and actions[0] is event.act.action


def _since(before: Sequence[Event]) -> Sequence[Event]:
    """Return the events from the last one on that leaves nothing of those before it, on every machine and way."""
    anew = [
        place
        for place, event in enumerate(before)
        if _begins_anew(event) and not _depends(event.act.step) and not event.act.section.when
    ]
    return before[anew[-1] :] if anew else before


def _begins_anew(event: Event) -> bool:
    ran = event.effect is Effect.BROUGHT and event.act.action.kind.name == "run"
    return ran or event.effect is Effect.LOST


def _depends(step: Step) -> bool:
    return bool(step.when or step.method or step.if_done or step.unless_done or step.optional)


def _of_reading(reading: LevelReading, before: Sequence[Event], ways: Ways) -> Iterator[Fault]:
    values = [reading.value, *(event.value for event in before if event.value is not None)]
    whens = [window.when for value in values for window in value.windows]
    mine = together(reading.covers, reading.section.when, reading.fluid.when)
    space = ways.space([event.act for event in before], [reading.step], [mine, *whens])
    if space is None:
        return
    bad: dict[_Missed, Cells] = {}
    marked = [(event, ways.cells(event.act, space)) for event in before]
    for happened, cells in runs(marked, space.where(mine) & ways.reached(reading.step, space)):
        for machine, alike in one_of_each(whens, cells, space):
            missed = _missed(warmth(happened, machine), spans_on(reading.value, machine))
            if missed is not None:
                bad[missed] = bad.get(missed, 0) | alike
    for missed, concern in bad.items():
        yield _fault(reading, missed, ways.shown(concern, space))


def _missed(now: Warmth, windows: tuple[Interval, ...]) -> _Missed | None:
    """Return how the windows are missed, or None where one of them may be reached or nothing is known."""
    if now.stated is None or not now.known or not windows:
        return None
    checks = [check_window(window, span) for window in windows for span in now.spans]
    if any(one.reading not in _ASIDE for one in checks):
        return None
    return _Missed(now.stated, now.spans, windows, min(checks, key=lambda one: one.lacking))


def _fault(reading: LevelReading, missed: _Missed, shown: Shown) -> Fault:
    quantity = reading.value.specification.value
    side = "cold" if missed.nearest.reading is Reading.TOO_COLD else "warm"
    return Fault(
        f'The level of "{reading.fluid.id}" counts {_at(missed.windows, quantity)}, but the steps before leave it '
        f"{_at(missed.allowed, quantity)}: {float(missed.nearest.lacking):g} K too {side}{shown.whom}.",
        reading.span,
        "Bring the fluid into the window before it is read, or correct one of the two temperatures.",
        (Related(missed.stated.span, "this temperature"),) if missed.stated.span is not None else (),
        shown.fitments,
    )


def _at(spans: Sequence[Interval], typed: Quantity | None) -> str:
    told = [quantity_of(span, typed.unit, typed.places).text for span in spans] if typed is not None else []
    words = [one if one.startswith("at ") else f"at {one}" for one in dict.fromkeys(told)]
    return joined(words, "or")
