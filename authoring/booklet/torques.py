"""Torque callouts: at the step, and gathered in one table."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.clamping import clamping
from authoring.booklet.fasteners import size_of
from authoring.booklet.orders import order_told
from authoring.booklet.phrases import in_turn
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.step_parts import LimitRow, TorqueCallout
from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Named, Text, Words
from authoring.booklet.wrench_marks import marks, warned
from authoring.diagnostics.words import joined
from authoring.model.procedure import Action, Step
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item
from authoring.model.wrenches import torque_of
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.show import limits, spell
from authoring.quantities.units import Dimension

UNPUBLISHED = "No torque is published:"
_THREADS = {"dry": "dry", "oiled": "oiled", "greased": "greased", "thread-lock": "with thread lock"}
_JOINTS = {
    "A": "somebody's life depends on it",
    "B": "the work of the machine depends on it",
    "C": "nothing but comfort depends on it",
}
NOMINAL_ONLY = "The source gives no limits; this is its nominal value."


def callouts(action: Action, step: Step, volume: Volume, wording: Wording, within: When) -> Iterator[TorqueCallout]:
    """Yield the callout of each fastener group an action of a step tightens."""
    for name in action.what:
        group = volume.scope.things[name].thing
        if isinstance(group, FastenerGroup) and (torque_of(group) is not None or group.tightened is not None):
            callout, warning = _callout(group, volume, wording), warned(group, step, volume)
            yield replace(
                callout,
                note=" ".join(filter(None, (warning, callout.note))),
                adapted=bool(warning),
                applies=wording.applies(group.when, within),
                lines=(*marks(group, step, volume), *_lines(group, wording)),
                derived=tuple(clamping(group, step, volume, wording)),
            )


def _callout(group: FastenerGroup, volume: Volume, wording: Wording) -> TorqueCallout:
    """Return what a group states of its torque, whatever the step."""
    quantity = torque_of(group)
    nominal = [NOMINAL_ONLY] if quantity is not None and quantity.form is Form.VALUE else []
    unpublished = [f"{UNPUBLISHED} {group.tightened}"] if quantity is None else []
    return TorqueCallout(
        fasteners=group.name,
        count=group.count,
        thread=size_of(group),
        rows=_rows(quantity, wording) if quantity is not None else (),
        source=wording.source(group.torque) if group.torque is not None else "",
        note=" ".join([*unpublished, *nominal, *_not_these(group, volume, wording)]),
    )


def _lines(group: FastenerGroup, wording: Wording) -> Iterator[tuple[str, Text]]:
    """Yield what is to be known beside the torque itself, each under its label."""
    if group.threads is not None:
        yield "Threads", (Words(_THREADS[group.threads]),)
    if group.stages:
        stages: list[Text] = [(wording.amount(stage),) for stage in group.stages]
        yield "Stages", in_turn(stages, ", then ")
    if order := order_told(group, wording):
        yield "Order", order
    if group.joint is not None:
        yield "Joint", (Words(f"class {group.joint}: {_JOINTS[group.joint]}"),)
    if group.joint == "A":
        tightened = Blank(label=f"Initials of who tightened the {group.name}")
        looked = Blank(label=f"Initials of the second person for the {group.name}")
        yield "Initials", (Words("tightened "), tightened, Words(" second person "), looked)


def _not_these(group: FastenerGroup, volume: Volume, wording: Wording) -> Iterator[str]:
    """Yield a warning for each other group of the machine with the same thread and another torque."""
    equipment = volume.scope.equipment
    for other in equipment.fasteners.values() if equipment is not None else ():
        if other.id == group.id or other.thread != group.thread or not volume.holds(other.when):
            continue
        theirs = other.torque.value if other.torque is not None else None
        ours = group.torque.value if group.torque is not None else None
        if theirs is not None and ours is not None and theirs.text != ours.text:
            length = f", {spell(other.length)} long" if other.length is not None else ""
            yield f"Not the {other.name}{length}: the same thread, but {wording.amount(theirs).first}."


def _rows(quantity: Quantity, wording: Wording) -> tuple[LimitRow, ...]:
    rows = []
    for unit in wording.units(quantity):
        shown = limits(quantity, unit)
        rows.append(LimitRow(shown.unit, shown.low, shown.nominal, shown.high))
    return tuple(rows)


class _Entry(Struct, frozen=True, eq=False):
    """One group of the table: the steps that tighten it, and at which of them an adapter makes the setting another."""

    group: FastenerGroup
    wording: Wording
    steps: list[Text]
    adapted: list[Text]


def torque_table(plan: Plan, wordings: dict[str, Wording]) -> Table:
    """Return every torque of the booklet in one table, in the order of the steps."""
    entries: dict[str, _Entry] = {}
    for volume in plan.volumes:
        for placed, action in volume.actions():
            for name in action.what if action.kind.torque else ():
                group = volume.scope.things[name].thing
                if isinstance(group, FastenerGroup):
                    entry = entries.setdefault(name, _Entry(group, wordings[volume.procedure.number], [], []))
                    step: Text = (Named(placed.number, placed.anchor),)
                    entry.steps.append(step)
                    if warned(group, placed.step, volume):
                        entry.adapted.append(step)
    return Table(
        id="torque-table",
        title="Every torque of this job",
        heads=("Fasteners", "Count", "Thread, and what turns it", "Torque", "Steps"),
        rows=tuple(_row(entry, plan) for entry in entries.values()),
        widths=(26, 8, 26, 28, 12),
        empty="Nothing is tightened to a torque.",
        numeric=(1,),
    )


def _row(entry: _Entry, plan: Plan) -> tuple[Cell, ...]:
    group, wording = entry.group, entry.wording
    torque: Text = (Words("as the step says"),)
    if group.tightened is not None:
        torque = (Words(f"{UNPUBLISHED} {group.tightened}"),)
    if group.torque is not None and group.torque.value is not None:
        rounds = [stage for stage in group.stages if stage.dimension is Dimension.TORQUE][:-1]
        turns = [stage for stage in group.stages if stage.dimension is Dimension.ANGLE]
        torque = in_turn([(wording.amount(one),) for one in (*rounds, group.torque.value, *turns)], ", then ")
    if entry.adapted:
        torque = (*torque, Words("; the wrench is set otherwise, as told in step "), *in_turn(entry.adapted))
    equipment = plan.main.scope.equipment
    item = equipment.items.get(group.on or "") if equipment is not None else None
    name: Text = (Words(group.name, "strong"), *_holds(item), *_only(wording.applies(group.when)))
    where = in_turn(entry.steps)
    return tuple(Cell(text) for text in (name, (Words(str(group.count)),), _size(group, plan), torque, where))


def _size(group: FastenerGroup, plan: Plan) -> Text:
    """Return thread, class and length, then the tools of which any one turns it, where they are stated."""
    things = plan.main.scope.things
    tools = joined([things[name].words for name in group.turned_with if name in things], "or")
    return (Words("; ".join(filter(None, (size_of(group), tools)))),)


def _holds(item: Item | None) -> Text:
    return (Words(f", on the {item.name}"),) if item is not None else ()


def _only(applies: str) -> Text:
    return (Words(f" ({applies})"),) if applies else ()
