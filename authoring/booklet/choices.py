"""Part choices: which of several look-alikes is the right one, which is not, and what decides nothing."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.phrases import in_turn
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside, Choice, ChoiceRow
from authoring.booklet.wording import Wording
from authoring.booklet.words import Bullets, Named, Text, Words
from authoring.model import procedure as written
from authoring.model.things import Part

_EITHER: Text = (Words("does as well: either will do, tick the one you took"),)


def choice_block(choice: written.Choice, anchor: str, volume: Volume, wording: Wording) -> Choice:
    """Return the block that says which of several parts is the right one, for the selection, and which is not."""
    rows: list[ChoiceRow] = []
    for one in sorted(choice.parts, key=lambda part: not volume.holds(part.when)):
        rows += _rows(one, choice, volume, wording)
    question = (*wording.line(choice.question), *_how_to_tell(choice, volume))
    notes = tuple(_notes(choice, volume, wording))
    return Choice(f"{anchor}-{choice.id}", choice.name, question, tuple(rows), notes)


def choice_again(choice: written.Choice, volume: Volume, wording: Wording) -> Aside:
    """Return the line for a later step: which part is right for which vehicle, and where the table stands."""
    told: list[Text] = []
    for one in choice.parts:
        if volume.holds(one.when):
            names = [volume.scope.things[name].thing for name in (one.part, *one.equal)]
            either = in_turn(
                [(Words(f"{part.name}, {part.number}"),) for part in names if isinstance(part, Part)], last=" or "
            )
            decides = _decides(one, choice, wording)
            told.append((*either, Words(": "), *decides) if decides else either)
    first = next(placed for placed, action in volume.actions() if choice.id in action.what)
    table = Named(f"step {first.number}", first.anchor, turn_to=True)
    told.append((Words("How to tell them apart: "), table, Words(".")))
    return Aside("Which one", (Bullets(tuple(told)),))


def _rows(one: written.ChoicePart, choice: written.Choice, volume: Volume, wording: Wording) -> Iterator[ChoiceRow]:
    """Yield a row for a part and for each that does as well."""
    right = volume.holds(one.when)
    # The look-alike of another vehicle stays in sight: it may lie in the same drawer, and it may fit.
    other: Text = () if right else (Words("NOT THIS ONE", "strong"), Words(": "))
    decides = (*other, *_decides(one, choice, wording))
    tick = right and bool(one.equal)
    for name in (one.part, *one.equal):
        part = volume.scope.things[name].thing
        if isinstance(part, Part):
            first = name == one.part
            tell = wording.line(one.tell) if first else ()
            said = decides if first or not right else _EITHER
            yield ChoiceRow(part.name, part.number, said, tell, tick)


def _how_to_tell(choice: written.Choice, volume: Volume) -> Text:
    """Return how to tell at the vehicle the features that decide, as far as the selection leaves them open."""
    equipment = volume.scope.equipment
    decide = dict.fromkeys(feature for part in choice.parts for feature in part.when)
    known = [equipment.features[one] for one in decide if equipment is not None and one in equipment.features]
    return tuple(Words(f" {one.tell}") for one in known if one.id not in volume.selection)


def _decides(part: written.ChoicePart, choice: written.Choice, wording: Wording) -> Text:
    told: list[Text] = []
    if part.when:
        told.append((Words(wording.said(part.when)),))
    if part.size is not None:
        told.append((wording.amount(part.size),))
    for dimension in choice.dimensions.values():
        size = part.sizes.get(dimension.id)
        if dimension.decides and size is not None and size.value is not None:
            told.append((Words(f"{dimension.name} "), wording.amount(size.value)))
    return in_turn(told, "; " if part.sizes else ", ")


def _notes(choice: written.Choice, volume: Volume, wording: Wording) -> Iterator[Text]:
    if choice.if_wrong is not None:
        yield (Words("The wrong one: ", "strong"), *wording.line(choice.if_wrong))
    told = [
        text for one in choice.dimensions.values() if not one.decides for text in _habit(one, choice, volume, wording)
    ]
    told += [wording.line(choice.no_matter)] if choice.no_matter is not None else []
    if told:
        yield (Words("Does not decide: ", "strong"), *in_turn(told, " "))


def _habit(dimension: written.Measured, choice: written.Choice, volume: Volume, wording: Wording) -> Iterator[Text]:
    """Yield a size that is measured by habit: once where all parts share it, else for each part."""
    sizes = [(part, part.sizes[dimension.id].value) for part in choice.parts if dimension.id in part.sizes]
    known = [(part, wording.amount(size)) for part, size in sizes if size is not None]
    lead = Words(f"{dimension.name}, measured by habit: ")
    if len({amount for _, amount in known}) == 1:
        yield (lead, known[0][1], Words("."))
    elif known:
        each: list[Text] = [(Words(f"{volume.scope.things[part.part].words} "), amount) for part, amount in known]
        yield (lead, *in_turn(each), Words("."))
