"""What a step or section asks beside its actions: what must be so, hands, repetition and time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.booklet import markup
from authoring.booklet.heat import burns, cools
from authoring.booklet.phrases import all_the, aside, in_turn, paragraph, times
from authoring.booklet.plan import Placed, Volume
from authoring.booklet.states import state
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Inline, Named, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.demands import Deadline, Holding, Need, Repeat
from authoring.model.procedure import Section, Step
from authoring.model.things import Item

MOST_ROUNDS = 12
"""Boxes for the rounds of a repetition that fit one line; of more rounds none is ticked."""

_HANDS = {"other-hand": "your other hand", "helper": "a helper"}


def before_step(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what is read before a step: whether it is done at all, by how many, and what must be so."""
    if step.optional is not None:
        yield aside("Optional", "This step may be skipped. ", *wording.line(step.optional))
    if step.if_done or step.unless_done:
        yield aside("Only if", *_only_if(step, wording))
    if step.persons is not None:
        yield aside("Persons", f"{step.persons} for this step")
    if step.needs:
        yield aside("Must be", *_states(step.needs, volume, wording))
        yield from cools(step.needs, volume, wording)
    if step.holding is not None and not _while_said(step.holding, step, wording):
        yield aside("While", *_while(step.holding, wording))
    yield from _near(step, volume, wording)


def before_section(section: Section, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what is read before the steps of a section."""
    if section.optional is not None:
        yield aside("Optional", "This section may be skipped. ", *wording.line(section.optional))
    if section.bench is not None:
        yield aside("Bench", "Work on ", *all_the([section.bench], wording), " at the bench.")
    if section.needs:
        yield aside("Must be", *_states(section.needs, volume, wording))
        yield from cools(section.needs, volume, wording)
    if section.free:
        yield aside("Order", "Do the steps of this section in any order.")
    if section.repeat is not None:
        yield repeated(section.repeat, "this section", wording)


def after_step(placed: Placed, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what completes the instruction: how often it is done, its time, and what is so afterwards."""
    step = placed.step
    if step.repeat is not None:
        yield repeated(step.repeat, "this step", wording)
    if step.deadline is not None:
        yield _deadline(step.deadline, wording)
    for other, within in volume.awaited.get(step.id, ()):
        there = Named(f"step {other.number}", other.anchor)
        note = Blank(label=f"Time at which step {placed.number} was done")
        runs = (" From here time runs for ", there, ": ", *wording.named(within), ".")
        yield aside("Time", "Note the time: ", note, *runs, close=True)
    if step.leaves:
        yield aside("After it", *_states(step.leaves, volume, wording), close=True)


def _states(needs: Iterable[Need], volume: Volume, wording: Wording) -> Text:
    told = []
    for need in needs:
        called: Text = (Named(volume.scope.things[need.thing].words),)
        told.append((*called, Words(": "), *state(need, volume.scope, wording)))
    return in_turn(told, "; ")


def _only_if(step: Step, wording: Wording) -> Text:
    told: list[Text] = []
    if step.if_done:
        told.append((*in_turn([wording.named(one) for one in step.if_done], last=" or "), Words(" was done")))
    if step.unless_done:
        several = " were not done" if len(step.unless_done) > 1 else " was not done"
        told.append((*in_turn([wording.named(one) for one in step.unless_done], last=" and "), Words(several)))
    return in_turn(told, ", and ")


def _while(holding: Holding, wording: Wording) -> Text:
    how = (Words(" "), *wording.line(holding.how)) if holding.how is not None else ()
    return (Words(f"{_HANDS[holding.by]} holds "), *all_the(holding.hold, wording), *how)


def _while_said(holding: Holding, step: Step, wording: Wording) -> bool:
    """Tell whether the instruction itself says what is kept meanwhile, and how."""
    told = wording.told(step)
    kept = [wording.plain(name).casefold() for name in holding.hold]
    how = markup.said(wording.line(holding.how)).casefold() if holding.how is not None else ""
    return "while" in told and all(words in told for words in (*kept, how))


def _near(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what the hands come near to, each thing with the kinds of hazard it has."""
    shop = volume.scope.library.shop
    registered = shop.hazards if shop is not None else {}
    told: list[Text] = []
    for name in step.near:
        thing = volume.scope.things[name].thing
        hazards = thing.hazards if isinstance(thing, Item) else ()
        kinds = joined([registered[one].name if one in registered else one for one in hazards], "and")
        why = "; ".join(one for one in (kinds, burns(thing, wording) if isinstance(thing, Item) else "") if one)
        told.append((Words(volume.scope.things[name].words, "strong"), *([Words(f" ({why})")] if why else [])))
    if told:
        yield aside("Near", *in_turn(told))


def repeated(repeat: Repeat, what: str, wording: Wording) -> Aside:
    """Return how often something is done, with a box for each round where their number is given."""
    told: list[Inline] = []
    if repeat.times is not None:
        told.append(Words(f"Do {what} {times(repeat.times)}."))
    if repeat.until is not None:
        told += [Words(f"Do {what} again until this is so: "), *wording.line(repeat.until)]
    if repeat.at_most is not None:
        told.append(Words(f" Do it {times(repeat.at_most)} at most."))
    if repeat.otherwise is not None:
        told += [Words(" If that does not help: "), *wording.line(repeat.otherwise)]
    rounds = repeat.times or repeat.at_most or 0
    return Aside("Repeat", (paragraph(*told),), close=True, rounds=rounds if rounds <= MOST_ROUNDS else 0)


def _deadline(deadline: Deadline, wording: Wording) -> Aside:
    start = wording.named(deadline.start)
    began, due = Blank(label="Time at which it began"), Blank(label="Time by which this step must be done")
    return Aside(
        "In time",
        (
            paragraph(*wording.named(deadline.within), " from ", *start, ": begun at ", began, ", to be done by ", due),
            paragraph(Words("Too late: ", "strong"), *wording.line(deadline.otherwise)),
        ),
        close=True,
    )
