"""The closing count: everything that came off, was opened or parted, and every tool, counted from the steps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Block, Cell, Chapter, Table
from authoring.booklet.count import Line, count
from authoring.booklet.counted import in_all
from authoring.booklet.either import decided_by_either
from authoring.booklet.plan import Placed, Plan
from authoring.booklet.ready import pairs, ready
from authoring.booklet.states import states
from authoring.booklet.steps import decided_by
from authoring.booklet.tools import tools_of
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.fluid import Fluid
from authoring.model.specification import When
from authoring.model.things import Consumable


def closing(plan: Plan, wordings: Mapping[str, Wording]) -> Chapter:
    """Return the chapter that a person fills in before the machine goes back to work."""
    wording = wordings[plan.main.procedure.number]
    lines = list(count(plan))
    note, by_vehicle = in_all(plan, lines, wording)
    back = Table(
        id="count",
        title="Everything back in its place",
        heads=("What", "Count", "Undone in step", "Done again in step", "Done"),
        rows=tuple(_row(line, wording) for line in lines),
        widths=(31, 9, 20, 31, 9),
        empty="Nothing was taken off, opened or parted.",
        numeric=(1,),
        note=note,
    )
    tools = ((Words(tool.name),) for tool in tools_of(plan))
    waste = (((Words(what),), (Words(where),)) for what, where in _waste(plan))
    blocks: list[Block] = [
        back,
        *by_vehicle,
        pairs("tools-back", "Tools counted back", "Tool", tools, "No tool was used.", box="Back"),
        ready("waste", "Where the waste goes", ("What", "Where"), (38, 52), waste, "No waste is left.", box="Done"),
    ]
    left = [row for volume in plan.volumes for row in states(volume.procedure.leaves, volume.scope, wording)]
    if left:
        blocks.insert(
            1 + len(by_vehicle), ready("left", "The machine is left", ("What", "Is left"), (46, 44), left, box="Seen")
        )
    return Chapter("closing", "", "Closing count", 1, tuple(blocks))


def _row(line: Line, wording: Wording) -> tuple[Cell, ...]:
    over = (Words(f", over the {joined(line.covers)}"),) if line.covers else ()
    # Steps for different vehicles together undo it on more of them than each one says.
    told, when = decided_by_either([placed.when for placed in line.off], line.volume, wording)
    only = (Words(told),)
    return (
        Cell((Words(line.words, "strong"), *over, *only)),
        Cell((Words(str(line.count)),) if line.count is not None else ()),
        Cell(_undone(line)),
        Cell(tuple(_ended(line, when, wording))),
        Cell(tick=True),
    )


def _undone(line: Line) -> Text:
    kept = (Words(f", kept in the {line.kept}" if line.kept else ", laid aside"),) if line.kept is not None else ()
    first = [placed for placed in line.off if placed not in line.again]
    again = (Words("; undone again in step "), *_steps(line.again), Words(", after it was back")) if line.again else ()
    return (*_steps(first), *_in_one_method(line.off), *again, *kept)


def _in_one_method(places: list[Placed]) -> Text:
    """Return a word for what comes off in one of several methods and stays on in the others."""
    methods = {placed.number: placed.step.method for placed in places}
    shared = {placed.shared for placed in places}
    one = next(iter(methods.values()), None)
    apart = one is not None and None not in methods.values() and len(shared) == 1 and len(methods) < one.count
    return (Words(", by this method only"),) if apart else ()


def _by_chance(placed: Placed) -> bool:
    """Tell whether a step is done on some jobs only, so that it may be the other way of two."""
    step = placed.step
    return bool(step.method is not None or step.if_done or step.unless_done or step.optional is not None)


def _ended(line: Line, around: When, wording: Wording) -> Iterator[Inline]:
    """Yield what became of a thing, the usual first: done again, held, discarded, replaced, empty, off for good.

    `around` is the condition that its row has told already.
    """
    told: list[Text] = [_steps(line.back)] if line.back else []
    if line.back and (line.stays_off or line.exchanged):
        told[0] += (Words(decided_by(line.back[-1].when, wording, around)),)
    if line.held and not line.back:
        trapped: Text = (Words(", trapped in step "), *_steps(line.trapped)) if line.trapped else ()
        loose: Text = () if line.trapped else (Words(", NOT SECURED", "strong"),)
        told.append((Words("held in step "), *_steps(line.held), *trapped, *loose))
    gone = [placed for placed in line.gone if not line.back or _by_chance(placed)]
    if gone:
        told.append((Words("discarded in step "), *_steps(gone)))
    for placed, part in line.renewed:
        whom = decided_by(placed.when, wording, around)
        told.append((Words("replaced in step "), *_steps([placed]), Words(f" by the {part}{whom}")))
    if line.empty:
        told.append((Words("left empty on purpose in step "), *_steps(line.empty)))
    told += [
        (Words(f"stays off: {change.name}{decided_by(change.when, wording, around)}"),) for change in line.stays_off
    ]
    renewed = {part for _, part in line.renewed}
    for change, part, fitted in (one for one in line.exchanged if one[1] not in renewed):
        step: Text = (Words("in step "), *_steps(fitted), Words(" ")) if fitted else ()
        whom = decided_by(change.when, wording, around)
        told.append((Words("replaced "), *step, Words(f"by the {part}: {change.name}{whom}")))
    for place, one in enumerate(told):
        yield from (Words("; "), *one) if place else one
    if not told:
        yield Words("NOT DONE AGAIN", "strong")


def _steps(places: list[Placed]) -> Text:
    """Return the numbers of some steps, each once; of methods, of which one is done, with "or" between them."""
    words: list[Inline] = []
    before = None
    for placed in {placed.anchor: placed for placed in places}.values():
        if before is not None:
            words.append(Words(" or " if placed.step.method is not None and placed.shared == before.shared else ", "))
        words.append(Named(placed.number, placed.anchor))
        before = placed
    return tuple(words)


def _waste(plan: Plan) -> Iterator[tuple[str, str]]:
    drained = {
        name
        for volume in plan.volumes
        for _, action in volume.actions()
        if action.kind.lets_out
        for name in action.what
    }
    for named, _ in plan.used:
        thing = named.thing
        if isinstance(thing, Consumable) and thing.disposal:
            yield thing.name, thing.disposal
        if isinstance(thing, Fluid) and thing.disposal and named.id in drained:
            yield thing.name, thing.disposal
