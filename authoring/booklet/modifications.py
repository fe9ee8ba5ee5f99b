"""In what the machine leaves different from how it came, and the note for whoever meets it next."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Block, Cell, Chapter, Form, FormLine, Table
from authoring.booklet.phrases import WHO, capital, in_turn, the
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Paragraph, Pick, Text, Words
from authoring.model.changes import Modification
from authoring.model.things import Part


def modifications(plan: Plan, wordings: Mapping[str, Wording]) -> tuple[Chapter, ...]:
    """Return the chapter on the modifications that this booklet may make; none where it makes none."""
    blocks = [
        block
        for volume in plan.volumes
        for change in made_by(volume)
        for block in _told(change, volume, wordings[volume.procedure.number])
    ]
    return (Chapter("modifications", "", "The machine leaves different", 1, tuple(blocks)),) if blocks else ()


def slips(plan: Plan, wordings: Mapping[str, Wording]) -> tuple[Chapter, ...]:
    """Return the leaf with what is torn off and handed on for each modification; none where nobody gets a slip."""
    forms = [
        form
        for volume in plan.volumes
        for change in made_by(volume)
        for form in _torn_off(change, plan, volume, wordings[volume.procedure.number])
    ]
    return (Chapter("slips", "", "Notes to tear off", 1, tuple(forms), new_page=True),) if forms else ()


def made_by(volume: Volume) -> Iterator[Modification]:
    """Yield the modifications of a procedure that hold for the selection."""
    return (change for change in volume.procedure.modifications.values() if volume.holds(change.when))


def _told(change: Modification, volume: Volume, wording: Wording) -> Iterator[Block]:
    anchor = _anchor(change, volume)
    applies = wording.applies(change.when)
    if applies:
        yield Paragraph((Words(f"{applies}:", "emphasis"),))
    yield _table(anchor, change, volume, wording)
    yield Form(f"{anchor}-signed", "Checked by", (FormLine("Name and date", lines=1),))


def _anchor(change: Modification, volume: Volume) -> str:
    return f"modification-{volume.letter.lower()}{change.id}"


def _torn_off(change: Modification, plan: Plan, volume: Volume, wording: Wording) -> Iterator[Form]:
    anchor = _anchor(change, volume)
    if "next-technician" in change.tell:
        yield _note(anchor, change, plan, volume, wording)
    for who in ("customer", "driver"):
        if who in change.tell:
            yield _slip(f"{anchor}-{who}", change, plan, wording, WHO[who])


def _table(anchor: str, change: Modification, volume: Volume, wording: Wording) -> Table:
    found: list[tuple[str, Text]] = [
        ("As found", wording.line(change.as_found)),
        ("As left", wording.line(change.as_left)),
    ]
    found += [("Added", _added(name, volume, wording)) for name in change.adds]
    found += [
        ("Exchanged", (*wording.named(old), Words(", now the "), *_added(new, volume, wording)))
        for old, new in change.replaces.items()
    ]
    found += [("Stays off", wording.named(name)) for name in change.leaves_out]
    found += [("Told", (Words(WHO[who]),)) for who in change.tell]
    found[2:2] = [("Clearance", text) for text in _clearances(change, volume, wording)]
    rows = [(Cell((Words(head, "strong"),)), Cell(text), Cell(tick=True)) for head, text in found]
    rows.insert(0, (Cell((Words("Made", "strong"),)), Cell((Pick("done"), Pick("not done"))), Cell()))
    if change.why:
        rows.insert(3, (Cell((Words("Why", "strong"),)), Cell(wording.line(change.why)), Cell()))
    return Table(anchor, capital(change.name), ("What", "How", "Seen"), tuple(rows), (18, 72, 10))


def _clearances(change: Modification, volume: Volume, wording: Wording) -> Iterator[Text]:
    """Yield for each new part what it stays clear of, and by how much, as the steps that fit it say."""
    new = {*change.adds, *change.replaces.values()}
    found: dict[tuple[str, str], Text] = {}
    for _, action in volume.actions():
        for name in action.what:
            for one in action.manner.clear_of if name in new and action.kind.counted else ():
                by = (Words(", "), *wording.named(one.by)) if one.by is not None else ()
                found[name, one.of] = (*the(name, wording), Words(" clear of "), *the(one.of, wording), *by)
    yield from found.values()


def _added(name: str, volume: Volume, wording: Wording) -> Text:
    part = volume.scope.things[name].thing
    number = f", {part.number}" if isinstance(part, Part) else ""
    return (*wording.named(name), Words(number))


def _slip(anchor: str, change: Modification, plan: Plan, wording: Wording, who: str) -> Form:
    """Return the short slip for somebody who only uses the machine."""
    rows = (
        FormLine("Machine", lines=1),
        FormLine("Now", wording.line(change.as_left)),
        *([FormLine("Why", wording.line(change.why))] if change.why else []),
        FormLine("Done after", (Words(_by(plan)),)),
        FormLine("Name and date", lines=1),
    )
    return Form(anchor, f"For {who}: {change.name}", rows, cut=True)


def _by(plan: Plan) -> str:
    procedure = plan.main.procedure
    return f"{procedure.number}, revision {procedure.revision.letter}"


def _note(anchor: str, change: Modification, plan: Plan, volume: Volume, wording: Wording) -> Form:
    clear = in_turn(_clearances(change, volume, wording), "; ")
    rows = [
        FormLine("Machine", lines=1),
        FormLine("Now", wording.line(change.as_left)),
        *([FormLine("Added", _listed(change.adds, wording))] if change.adds else []),
        *(FormLine("Exchanged", _exchanged(old, new, wording)) for old, new in change.replaces.items()),
        *([FormLine("Stays off", _listed(change.leaves_out, wording))] if change.leaves_out else []),
        *([FormLine("Clearance", clear)] if clear else []),
        FormLine("Done after", (Words(_by(plan)),)),
        FormLine("Name and date", lines=1),
    ]
    title = f"For the next technician: {change.name}"
    return Form(f"{anchor}-note", title, tuple(rows), "Leave this note with the machine.", cut=True)


def _listed(names: tuple[str, ...], wording: Wording) -> Text:
    words: list[Inline] = []
    for name in names:
        words += [Words(", "), *wording.named(name)] if words else wording.named(name)
    return tuple(words)


def _exchanged(old: str, new: str, wording: Wording) -> Text:
    return (Words("the "), *wording.named(old), Words(", now the "), *wording.named(new))
