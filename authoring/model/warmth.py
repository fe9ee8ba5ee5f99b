"""What the steps before let the temperature of a fluid be: what it was brought to, and what has warmed or cooled it."""

from __future__ import annotations

import enum
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Span
from authoring.model.course import Act
from authoring.model.fitments import Fitment
from authoring.model.fluid import Fluid
from authoring.model.levels import spans_on, temperature
from authoring.model.library import Scope
from authoring.model.procedure import Step
from authoring.model.things import Value
from authoring.workshop.interval import Interval, overlap


class Effect(enum.Enum):
    """What a step does to the temperature of a fluid."""

    BROUGHT = "brought"
    """To the windows of a value: heated, or run until it is there."""
    MET = "met"
    """It must be in the windows of a value, or is measured to be, as far as it can be: all else is left out."""
    RUNS = "runs"
    """Something runs, and the fluid may get warmer."""
    STOPS = "stops"
    """What ran stands still, and the fluid may get colder."""
    WAITS = "waits"
    """It goes on the way it goes: warmer while something runs, colder while nothing does."""
    RESTS = "rests"
    """The job may stop here for a night, or colder fluid is added."""
    LOST = "lost"
    """Nothing is known any more."""


class Event(Struct, frozen=True, eq=False):
    """One effect, the action beside which it happens, and the value and place of a temperature."""

    effect: Effect
    act: Act
    value: Value | None = None
    span: Span | None = None


class Warmth(Struct, frozen=True):
    """The intervals of temperature in K of which the fluid may be in any, and the event that last stated one."""

    spans: tuple[Interval, ...] = (Interval(None, None),)
    stated: Event | None = None
    running: bool | None = None

    @property
    def known(self) -> bool:
        """Whether anything is known, whichever interval it is in."""
        return all(span.low is not None or span.high is not None for span in self.spans)


_MOVED = {
    "run": Effect.RUNS,
    "stop": Effect.STOPS,
    "wait": Effect.WAITS,
    "drain": Effect.LOST,
    "extract": Effect.LOST,
    "fill": Effect.RESTS,
    "top-up": Effect.RESTS,
    "fill-to-level": Effect.RESTS,
}
_OF_THE_FLUID = frozenset({"drain", "extract", "fill", "top-up", "fill-to-level"})


def events(course: Iterable[Act], fluid: Fluid, scope: Scope, *, alone: bool) -> Iterator[Event]:
    """Yield what a job's steps do to the temperature of a fluid, in order.

    `alone` says that no other fluid of the job goes by a temperature, so that "run until 70 °C" speaks of this one;
    where a step speaks of another fluid of the machine it does not.
    What may be skipped states nothing for certain, and a procedure that is carried out on the way ends what was known.
    """
    before: Act | None = None
    for act in course:
        if before is not None and act.section is not before.section and before.section.safe_to_stop is not None:
            yield Event(Effect.RESTS, act)
        if before is None or act.step is not before.step:
            yield from _needed(act, fluid, scope)
        before = act
        if act.own:
            yield from _of_action(act, fluid, scope, alone=alone)
        else:
            yield Event(Effect.LOST, act)


def _needed(act: Act, fluid: Fluid, scope: Scope) -> Iterator[Event]:
    for need in (*act.section.needs, *act.step.needs) if act.step.optional is None else ():
        value = temperature(need.state, scope) if need.thing == fluid.id else None
        if value is not None:
            yield Event(Effect.MET, act, value, need.where.of(need.thing))


def _of_action(act: Act, fluid: Fluid, scope: Scope, *, alone: bool) -> Iterator[Event]:
    action, name = act.action, act.action.kind.name
    held = {fluid.id, fluid.held_in}
    role = {"heat": "to", "run": "until", "measure": "value"}.get(name, "")
    value = temperature(action.roles.get(role, ""), scope)
    mine = bool(held & set(action.what))
    if name == "run" and value is not None:
        mine = alone and not _of_another(act.step, fluid, scope)
    skipped = act.step.optional is not None or act.section.optional is not None
    if value is not None and mine and skipped:
        yield Event(Effect.LOST, act)
    elif value is not None and mine:
        yield Event(Effect.MET if name == "measure" else Effect.BROUGHT, act, value, action.where.of(role))
    elif name in _MOVED and (name not in _OF_THE_FLUID or fluid.id in action.what):
        yield Event(_MOVED[name], act)


def _of_another(step: Step, fluid: Fluid, scope: Scope) -> bool:
    """Tell whether a step speaks of another fluid of the machine, as in "until the coolant has 70 °C"."""
    said = set(step.text.casefold().replace("[", " ").replace("]", " ").split())
    fluids = scope.equipment.fluids.values() if scope.equipment is not None else ()
    spoken = {one.id for one in fluids if said & set(one.name.casefold().split()[-1:])}
    return bool(spoken) and fluid.id not in spoken


def warmth(happened: Sequence[Event], machine: Fitment) -> Warmth:
    """Return what the temperature may be on a machine after these events, in order."""
    found = Warmth()
    for event in happened:
        found = _then(found, event, machine)
    return found


def _then(before: Warmth, event: Event, machine: Fitment) -> Warmth:
    running = {Effect.RUNS: True, Effect.STOPS: False}.get(event.effect, before.running)
    match event.effect:
        case Effect.BROUGHT if event.value is not None:
            ran = True if event.act.action.kind.name == "run" else running
            return Warmth(spans_on(event.value, machine), event, ran)
        case Effect.MET if event.value is not None:
            windows = spans_on(event.value, machine)
            both = tuple(one for window in windows for span in before.spans if (one := overlap(window, span)))
            return Warmth(both, event, running) if both else Warmth(before.spans, before.stated, running)
        case Effect.RUNS:
            return Warmth(_warmer(before.spans), before.stated, running)
        case Effect.STOPS | Effect.RESTS:
            return Warmth(_colder(before.spans), before.stated, running)
        case Effect.WAITS if before.running is not None:
            return Warmth((_warmer if running else _colder)(before.spans), before.stated, running)
        case _:
            return Warmth(running=None)


def _warmer(spans: tuple[Interval, ...]) -> tuple[Interval, ...]:
    return tuple(Interval(span.low, None) for span in spans)


def _colder(spans: tuple[Interval, ...]) -> tuple[Interval, ...]:
    return tuple(Interval(None, span.high) for span in spans)
