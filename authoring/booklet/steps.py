"""Sections and steps to chapters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Block, Chapter
from authoring.booklet.cautions import cautions
from authoring.booklet.checkpoints import checkpoint
from authoring.booklet.plan import Placed, Volume
from authoring.booklet.step_parts import Aside, Caution, Choice, ChoiceRow, Figure, Step, StepPart
from authoring.booklet.torques import callouts
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Paragraph, Passage, Text, Words
from authoring.model import procedure as written
from authoring.model.library import Scope
from authoring.model.things import Consumable, Fluid, Item, Part, When


def chapters(volume: Volume, wording: Wording, figures: Mapping[str, tuple[Figure, str]]) -> Iterator[Chapter]:
    """Yield a chapter for each section that has steps; `figures` gives each figure and the step that shows it."""
    shown: set[str] = set()
    for section, anchor, steps in volume.sections:
        blocks: list[Block] = list(cautions(section.safety, anchor, volume, wording))
        blocks += wording.passage(section.intro)
        blocks += [_step(placed, volume, wording, figures, shown) for placed in steps]
        applies = wording.applies(section.when)
        level = 2 if volume.letter else 1
        yield Chapter(anchor, "", section.title, level, tuple(blocks), applies, phase=section.phase or "")


def _step(
    placed: Placed, volume: Volume, wording: Wording, figures: Mapping[str, tuple[Figure, str]], shown: set[str]
) -> Step:
    step = placed.step
    return Step(
        id=placed.anchor,
        number=placed.number,
        applies=wording.applies(step.when),
        cautions=_cautions(placed, volume, wording),
        text=wording.line(step.text),
        parts=(
            *_asides_before(placed, volume, wording, shown),
            *_figures(placed, figures),
            *_of_actions(placed, volume, wording, shown),
            *_asides_after(step, wording),
        ),
    )


def _cautions(placed: Placed, volume: Volume, wording: Wording) -> tuple[Caution, ...]:
    return cautions(placed.step.safety, placed.anchor, volume, wording, _around(placed))


def _around(placed: Placed) -> When:
    return {**placed.section.when, **placed.step.when}


def _of_actions(placed: Placed, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[StepPart]:
    checks = 0
    for action in placed.step.actions:
        for name in action.what:
            thing = volume.scope.things[name].thing
            # The table that tells look-alikes apart stands where they are first met, and again where one goes on.
            if isinstance(thing, written.Choice) and (name not in shown or action.kind.name == "fit"):
                shown.add(name)
                yield choice_block(thing, placed.anchor, volume, wording)
        if action.kind.torque:
            yield from callouts(action, volume, wording, _around(placed))
        if action.kind.checkpoint:
            checks += 1
            yield checkpoint(action, f"{placed.anchor}-k{checks}", volume.scope, wording)


def choice_block(choice: written.Choice, anchor: str, volume: Volume, wording: Wording) -> Choice:
    """Return the block that says which of several parts is the right one, for the selection, and which is not."""
    rows = []
    for one in sorted(choice.parts, key=lambda part: not volume.holds(part.when)):
        part = volume.scope.things[one.part].thing
        if isinstance(part, Part):
            # The look-alike of another vehicle stays in sight: it may lie in the same drawer, and it may fit.
            other: Text = () if volume.holds(one.when) else (Words("NOT THIS ONE", "strong"), Words(": "))
            rows.append(ChoiceRow(part.name, part.number, (*other, *_decides(one, wording)), wording.line(one.tell)))
    question = (*wording.line(choice.question), *_how_to_tell(choice, volume))
    return Choice(f"{anchor}-{choice.id}", choice.name, question, tuple(rows))


def _how_to_tell(choice: written.Choice, volume: Volume) -> Text:
    """Return how to tell at the vehicle the features that decide, as far as the selection leaves them open."""
    equipment = volume.scope.equipment
    decide = dict.fromkeys(feature for part in choice.parts for feature in part.when)
    known = [equipment.features[one] for one in decide if equipment is not None and one in equipment.features]
    return tuple(Words(f" {one.tell}") for one in known if one.id not in volume.selection)


def _decides(part: written.ChoicePart, wording: Wording) -> Text:
    told: list[Inline] = []
    if part.when:
        told.append(Words(wording.said(part.when)))
    if part.size is not None:
        told += [Words(", "), wording.amount(part.size)] if told else [wording.amount(part.size)]
    return tuple(told)


def _figures(placed: Placed, figures: Mapping[str, tuple[Figure, str]]) -> Iterator[StepPart]:
    for name in placed.step.figures:
        figure, first = figures[name]
        if first == placed.anchor:
            yield figure
        else:
            named = Named(f"figure {figure.number}", figure.id, turn_to=True)
            yield Aside("See", (Paragraph((named, Words(f", {figure.title}"))),))


def _asides_before(placed: Placed, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[Aside]:
    step = placed.step
    if step.uses:
        yield Aside("With", _listed([wording.named(name) for name in step.uses]))
    for name in dict.fromkeys(name for action in step.actions for _, name in action.names()):
        thing = volume.scope.things[name].thing
        if isinstance(thing, Item) and thing.place and name not in shown:
            shown.add(name)
            yield Aside("Where", (Paragraph((Words(f"{thing.name}: {thing.place}"),)),))
    yield from _fluids(step, volume.scope, wording)
    yield from _materials(step, volume.scope)


def _materials(step: written.Step, scope: Scope) -> Iterator[Aside]:
    """Yield what the hand needs to know of a part that is fitted and of a consumable, where it is used."""
    for action in step.actions:
        for name in action.what if action.kind.counted else ():
            part = scope.things[name].thing
            if isinstance(part, Part):
                count = f"{action.count} × " if action.count > 1 else ""
                new = ", always new" if part.one_time else ""
                yield Aside("Part", (Paragraph((Words(f"{count}{part.name}, {part.number}{new}"),)),))
    for name in dict.fromkeys([*step.uses, *(name for action in step.actions for name in action.what)]):
        thing = scope.things[name].thing
        if isinstance(thing, Consumable) and thing.limits:
            yield Aside("Limits", (Paragraph((Words(f"{thing.name}: {thing.limits}"),)),))


def _fluids(step: written.Step, scope: Scope, wording: Wording) -> Iterator[Aside]:
    for action in step.actions:
        for name in action.what:
            fluid = scope.things[name].thing
            if isinstance(fluid, Fluid) and action.kind.pours:
                words: list[Inline] = [Words(fluid.kind)]
                if fluid.capacity is not None and fluid.capacity.value is not None:
                    words += [Words("; the dry system holds "), wording.amount(fluid.capacity.value)]
                yield Aside("Fluid", (Paragraph(tuple(words)),))


def _asides_after(step: written.Step, wording: Wording) -> Iterator[Aside]:
    if step.why:
        yield Aside("Why", wording.passage(step.why))
    if step.tip:
        yield Aside("Tip", wording.passage(step.tip))


def _listed(entries: list[Text]) -> Passage:
    words: list[Inline] = []
    for entry in entries:
        words += [Words(", "), *entry] if words else entry
    return (Paragraph(tuple(words)),)


def decided_by(when: When, wording: Wording) -> str:
    """Return for which vehicles a line of a list counts, in brackets, or nothing."""
    told = wording.applies(when)
    return f" ({told[0].lower()}{told[1:]})" if told else ""
