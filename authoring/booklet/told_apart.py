"""The part choices of a booklet on its page of what was checked: what decides each, and how the reader tells."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.phrases import WHO, capital, in_turn
from authoring.booklet.plan import Placed, Plan, Volume
from authoring.booklet.wording import Wording
from authoring.booklet.words import Named, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.gauging import gauge_for, sizes_of
from authoring.model.procedure import Choice


def told_apart(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[Table]:
    """Yield the table of the part choices that the steps make; nothing where they make none."""
    rows = []
    for volume in plan.volumes:
        used = {name for _, action in volume.actions() for _, name in action.names()}
        wording = wordings[volume.procedure.number]
        rows += [_row(one, volume, wording) for one in volume.procedure.choices.values() if one.id in used]
    if rows:
        heads = ("Part choice", "What decides", "How the reader tells")
        yield Table("told-apart", "How each part choice is told", heads, tuple(rows), (32, 26, 42))


def _row(choice: Choice, volume: Volume, wording: Wording) -> tuple[Cell, ...]:
    parts = joined([wording.plain(name) for part in choice.parts for name in (part.part, *part.equal)], "or")
    told = list(_tells(choice, volume, wording))
    return (
        Cell((Words(capital(choice.name), "strong"), Words(f": {parts}"))),
        Cell((Words(joined(list(_decides(choice, volume)), "and") or "nothing that is stated"),)),
        Cell(in_turn(told, " ") if told else (Words("nothing that is stated", "strong"),)),
    )


def _features(choice: Choice) -> dict[str, None]:
    return dict.fromkeys(feature for part in choice.parts for feature in part.when)


def _decides(choice: Choice, volume: Volume) -> Iterator[str]:
    vehicle = volume.scope.vehicle
    known = vehicle.features if vehicle is not None else {}
    yield from (known[name].name for name in _features(choice) if name in known)
    yield from (one.name for one in choice.dimensions.values() if one.decides)
    if any(part.size is not None for part in choice.parts):
        yield "the size"


def _tells(choice: Choice, volume: Volume, wording: Wording) -> Iterator[Text]:
    """Yield a sentence for each thing that decides, and one for each step that looks at the part itself."""
    vehicle = volume.scope.vehicle
    for name in _features(choice):
        option = volume.procedure.options.get(name)
        if name in volume.selection:
            yield (Words("Settled for this booklet."),)
        elif option is not None:
            yield (Words(f"Decided by {WHO[option.decided_by]}: "), *wording.line(option.question))
        elif vehicle is not None and name in vehicle.features:
            yield (Words(vehicle.features[name].tell),)
    for placed, verb in _looks(choice, volume):
        gauge = gauge_for(sizes_of(choice), placed.step, volume.scope) if verb == "measure" else None
        by = f" on the {gauge.tool.name}" if gauge is not None else ""
        step = Named(f"step {placed.number}", placed.anchor)
        yield (Words(f"{_DONE[verb]}{by} in "), step, Words("."))


_DONE = {"measure": "Measured", "inspect": "Looked at", "compare": "Compared"}


def _looks(choice: Choice, volume: Volume) -> Iterator[tuple[Placed, str]]:
    names = {choice.id, *(name for part in choice.parts for name in (part.part, *part.equal))}
    for placed, action in volume.actions():
        # With a value it is something else that is measured of the part, such as how deep it sits.
        if action.kind.name in _DONE and names & set(action.what) and "value" not in action.roles:
            yield placed, action.kind.name
