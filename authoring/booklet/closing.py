"""The closing count: everything that came off, was opened or parted, and every tool, counted from the steps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Block, Cell, Chapter, Table
from authoring.booklet.count import Line, count
from authoring.booklet.plan import Placed, Plan
from authoring.booklet.ready import ready
from authoring.booklet.setup import states
from authoring.booklet.steps import decided_by
from authoring.booklet.tools import tools_of
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.things import Consumable, Fluid


def closing(plan: Plan, wordings: Mapping[str, Wording]) -> Chapter:
    """Return the chapter that a person fills in before the machine goes back to work."""
    wording = wordings[plan.main.procedure.number]
    back = Table(
        id="count",
        title="Everything back in its place",
        heads=("What", "Count", "Undone in step", "Done again in step", "Done"),
        rows=tuple(_row(line, wording) for line in count(plan)),
        widths=(31, 9, 20, 31, 9),
        empty="Nothing was taken off, opened or parted.",
        numeric=(1,),
    )
    tools = (((Words(tool.name),),) for tool in tools_of(plan))
    waste = (((Words(what),), (Words(where),)) for what, where in _waste(plan))
    blocks: list[Block] = [
        back,
        ready("tools-back", "Tools counted back", ("Tool",), (90,), tools, "No tool was used.", box="Back"),
        ready("waste", "Where the waste goes", ("What", "Where"), (38, 52), waste, "No waste is left.", box="Done"),
    ]
    left = [row for volume in plan.volumes for row in states(volume.procedure.leaves, volume, wording)]
    if left:
        blocks.insert(1, ready("left", "The machine is left", ("What", "Is left"), (46, 44), left, box="Seen"))
    return Chapter("closing", "", "Closing count", 1, tuple(blocks))


def _row(line: Line, wording: Wording) -> tuple[Cell, ...]:
    over = (Words(f", over the {joined(line.covers)}"),) if line.covers else ()
    applies = wording.applies(line.off[0].step.when) if line.off else ""
    only = (Words(f" ({applies})"),) if applies else ()
    return (
        Cell((Words(line.words, "strong"), *over, *only)),
        Cell((Words(str(line.count)),)),
        Cell(_undone(line)),
        Cell(tuple(_ended(line, wording))),
        Cell(tick=True),
    )


def _undone(line: Line) -> Text:
    kept = (Words(f", kept in the {line.kept}" if line.kept else ", laid aside"),) if line.kept is not None else ()
    return (*_steps(line.off), *kept)


def _ended(line: Line, wording: Wording) -> Iterator[Inline]:
    """Yield what became of a thing, the usual first: done again, held, discarded, empty, off for good."""
    told: list[Text] = [_steps(line.back)] if line.back else []
    if line.back and (line.stays_off or line.exchanged):
        told[0] += (Words(decided_by(line.back[-1].when, wording)),)
    if line.held and not line.back:
        trapped: Text = (Words(", trapped in step "), *_steps(line.trapped)) if line.trapped else ()
        loose: Text = () if line.trapped else (Words(", NOT SECURED", "strong"),)
        told.append((Words("held in step "), *_steps(line.held), *trapped, *loose))
    if line.gone and not line.back:
        told.append((Words("discarded in step "), *_steps(line.gone)))
    if line.empty:
        told.append((Words("left empty on purpose in step "), *_steps(line.empty)))
    told += [(Words(f"stays off: {change.name}{decided_by(change.when, wording)}"),) for change in line.stays_off]
    told += [
        (Words(f"replaced by the {part}: {change.name}{decided_by(change.when, wording)}"),)
        for change, part in line.exchanged
    ]
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
        if action.kind.name in {"drain", "extract"}
        for name in action.what
    }
    for named, _ in plan.used:
        thing = named.thing
        if isinstance(thing, Consumable) and thing.disposal:
            yield thing.name, thing.disposal
        if isinstance(thing, Fluid) and thing.disposal and named.id in drained:
            yield thing.name, thing.disposal
