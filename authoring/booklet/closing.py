"""The closing count: everything that came off, was opened or parted, and every tool, counted from the steps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.booklet.blocks import Cell, Chapter, Table
from authoring.booklet.plan import Placed, Plan, Volume
from authoring.booklet.setup import used
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.action_kinds import action_kinds
from authoring.model.library import Thing
from authoring.model.procedure import Action
from authoring.model.things import Consumable, FastenerGroup, Fluid, Item, Tool


class _Line(Struct):
    """One thing of the count while the steps are walked."""

    words: str
    count: int
    covers: tuple[str, ...]
    off: list[Placed] = []
    back: list[Placed] = []
    gone: list[Placed] = []


def closing(plan: Plan, wordings: Mapping[str, Wording]) -> Chapter:
    """Return the chapter that a person fills in before the machine goes back to work."""
    lines: dict[str, _Line] = {}
    for volume in plan.volumes:
        _walk(volume, lines)
    rows = tuple(_row(line, wordings[plan.main.procedure.number]) for line in lines.values() if line.off)
    count = Table(
        id="count",
        title="Everything back in its place",
        heads=("What", "Count", "Undone in step", "Done again in step", "Done"),
        rows=rows,
        widths=(36, 10, 20, 24, 10),
        empty="Nothing was taken off, opened or parted.",
        numeric=(1,),
    )
    tools = Table(
        id="tools-back",
        title="Tools counted back",
        heads=("Tool", "Back"),
        rows=tuple((Cell((Words(tool),)), Cell(tick=True)) for tool in _tools(plan)),
        widths=(90, 10),
        empty="No tool was used.",
    )
    waste = Table(
        id="waste",
        title="Where the waste goes",
        heads=("What", "Where", "Done"),
        rows=tuple((Cell((Words(what),)), Cell((Words(where),)), Cell(tick=True)) for what, where in _waste(plan)),
        widths=(38, 52, 10),
        empty="No waste is left.",
    )
    return Chapter("closing", "", "Closing count", 1, (count, tools, waste))


def _walk(volume: Volume, lines: dict[str, _Line]) -> None:
    undone = {verb for kind in action_kinds().values() for verb in kind.undoes}
    for placed, action in volume.actions():
        for name in action.what:
            thing = volume.scope.things[name].thing
            count = thing.count if isinstance(thing, FastenerGroup) else 1
            covers = thing.covers if isinstance(thing, Item) else ()
            if action.kind.name in undone:
                over = tuple(volume.scope.things[one].words for one in covers)
                lines.setdefault(name, _Line(volume.scope.things[name].words, count, over)).off.append(placed)
            elif name in lines and _brings_back(action, thing):
                lines[name].back.append(placed)
            elif name in lines and action.kind.name == "discard":
                lines[name].gone.append(placed)


def _brings_back(action: Action, thing: Thing) -> bool:
    """Tell whether an action puts a thing back as it belongs: fasteners only when they are tightened."""
    return action.kind.torque if isinstance(thing, FastenerGroup) else bool(action.kind.undoes)


def _row(line: _Line, wording: Wording) -> tuple[Cell, ...]:
    over = (Words(f", over the {joined(line.covers)}"),) if line.covers else ()
    back: Text = _steps(line.back) or ((Words("discarded in step "), *_steps(line.gone)) if line.gone else ())
    applies = wording.applies(line.off[0].step.when)
    only = (Words(f" ({applies})"),) if applies else ()
    return (
        Cell((Words(line.words, "strong"), *over, *only)),
        Cell((Words(str(line.count)),)),
        Cell(_steps(line.off)),
        Cell(back or (Words("NOT DONE AGAIN", "strong"),)),
        Cell(tick=True),
    )


def _steps(places: list[Placed]) -> Text:
    words: list[Inline] = []
    for anchor, number in dict.fromkeys((placed.anchor, placed.number) for placed in places):
        words += [Words(", "), Named(number, anchor)] if words else [Named(number, anchor)]
    return tuple(words)


def _tools(plan: Plan) -> Iterator[str]:
    for name, _, volume in used(plan):
        thing = volume.scope.things[name].thing
        if isinstance(thing, Tool):
            yield thing.name


def _waste(plan: Plan) -> Iterator[tuple[str, str]]:
    drained = {
        name
        for volume in plan.volumes
        for _, action in volume.actions()
        if action.kind.name == "drain"
        for name in action.what
    }
    for name, _, volume in used(plan):
        thing = volume.scope.things[name].thing
        if isinstance(thing, Consumable) and thing.disposal:
            yield thing.name, thing.disposal
        if isinstance(thing, Fluid) and thing.disposal and name in drained:
            yield thing.name, thing.disposal
