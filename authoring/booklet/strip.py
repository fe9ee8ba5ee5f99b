"""The strip of energy and condition: drawn along the steps, and the same as a table whose numbers lead to the steps."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.booklet.blocks import Block, Cell, Table
from authoring.booklet.by_vehicle import Vehicles, any_of, booked
from authoring.booklet.condition import SHOWN, START, Lanes, Stretch, lanes, moments
from authoring.booklet.drawings.strips import Row, strips
from authoring.booklet.either import either
from authoring.booklet.in_order import Done, in_order
from authoring.booklet.markup import said
from authoring.booklet.phrases import in_turn
from authoring.booklet.plan import Plan
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Paragraph, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.ends import Side
from authoring.model.fitments import covered
from authoring.model.specification import When

_NOTHING = "No step isolates, holds, locks, runs, raises, opens, disconnects, drains or heats anything."
_ALL_IN_ONE = "There are too many kinds of vehicle to tell them apart: the steps for all of them are taken as done."
_WORKED_OUT = "Worked out from what the steps do; each method of a step counts, and no way back from a checkpoint does."


class _Line(Struct, frozen=True):
    """One side of a thing, its stretches, and the vehicles on which it has them; no words for all of them."""

    side: Side
    stretches: tuple[Stretch, ...]
    whose: str = ""


def strip(plan: Plan, wording: Wording) -> Iterator[Block]:
    """Yield the drawing and the table; one sentence where there is nothing to draw."""
    course = in_order(plan)
    found, note = _lines(plan, course, wording)
    if not found:
        yield Paragraph((Words(_NOTHING),))
        return
    rows = [
        Row(
            f"{_name(line, plan)}: {_how(line)}{f' ({line.whose})' if line.whose else ''}",
            SHOWN[line.side[1], line.stretches[0].state].safe,
            line.stretches,
            said(_told(line, course)),
        )
        for line in found
    ]
    numbers = [done.placed.number for done in course]
    begins = [at for at, done in enumerate(course) if not at or _section(done) != _section(course[at - 1])]
    yield from strips(rows, numbers, begins)
    yield Table(
        id="strip-table",
        title="The same in words",
        heads=("What", "How it is", "Steps"),
        rows=tuple(
            (
                Cell((Words(_name(line, plan), "strong"), Words(f" (only {line.whose})" if line.whose else ""))),
                Cell((Words(_how(line)),)),
                Cell(_told(line, course)),
            )
            for line in found
        ),
        widths=(38, 20, 42),
        note=note,
    )


def _section(done: Done) -> tuple[str, str]:
    return done.volume.letter, done.placed.section.id


def _lines(plan: Plan, course: Sequence[Done], wording: Wording) -> tuple[list[_Line], str]:
    """Return what is told, and the note below it."""
    comes = plan.main.procedure.needs
    together = lanes(moments(course, comes, {}))
    vehicles = Vehicles(plan.main, _conditions(course, {thing for (thing, _), _ in together}))
    groups = vehicles.grouped(lambda machine: lanes(moments(course, comes, machine)))
    if vehicles.too_many:
        return [_Line(side, stretches) for side, stretches in together], f"{_WORKED_OUT} {_ALL_IN_ONE}"
    # What is so on one machine may be missing from all of them taken together, as an early end hides a late one.
    sides = dict.fromkeys(side for some in (together, *groups) for side, _ in some)
    order = list(dict.fromkeys(side for side, _ in SHOWN))
    found = []
    for side in sorted(sides, key=lambda one: order.index(one[1])):
        alike: dict[tuple[Stretch, ...], list[When]] = {}
        for some, theirs in groups.items():
            alike.setdefault(_on(side, some), []).extend(theirs)
        for stretches, whens in alike.items():
            if stretches:
                found.append(_Line(side, stretches, any_of(_fewer(whens, plan), wording) if len(alike) > 1 else ""))
    return found, _WORKED_OUT


def _fewer(whens: Sequence[When], plan: Plan) -> Sequence[When]:
    vehicle = plan.main.scope.vehicle
    return either(whens, covered(vehicle, booked(plan.main))) if vehicle is not None else whens


def _on(side: Side, some: Lanes) -> tuple[Stretch, ...]:
    return next((stretches for one, stretches in some if one == side), ())


def _conditions(course: Sequence[Done], things: set[str]) -> list[When]:
    """Return the conditions of the steps that do something to one of these things, or ask for it."""
    found: list[When] = []
    for done in course:
        section, step = done.placed.section, done.placed.step
        asked = {need.thing for need in (*section.needs, *step.needs, *step.leaves)}
        if things & (asked | {name for action in step.actions for name in action.what}):
            found += done.whens
    return found


def _name(line: _Line, plan: Plan) -> str:
    thing = line.side[0]
    return next((one.scope.things[thing].words for one in plan.volumes if thing in one.scope.things), thing)


def _how(line: _Line) -> str:
    words = dict.fromkeys(SHOWN[line.side[1], stretch.state].words for stretch in line.stretches)
    return joined(list(words), "or")


def _told(line: _Line, course: Sequence[Done]) -> Text:
    return in_turn([tuple(_from_to(stretch, course)) for stretch in line.stretches], "; ")


def _from_to(stretch: Stretch, course: Sequence[Done]) -> Iterator[Inline]:
    if stretch.first == stretch.last:
        yield Words("at step ")
        yield _step(stretch.first, course)
        return
    if stretch.first == START:
        yield Words("from the beginning")
    else:
        yield Words("from step ")
        yield _step(stretch.first, course)
    if stretch.last is None:
        yield Words(" to the end")
    else:
        yield Words(" to step ")
        yield _step(stretch.last, course)


def _step(place: int, course: Sequence[Done]) -> Named:
    placed = course[place].placed
    return Named(placed.number, placed.anchor)
