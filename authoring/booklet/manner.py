"""The manner of an action: how, which way round, into what, clear of what, and how the hand knows that it is done."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.phrases import all_the, aside, in_turn, the
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Bullets, Inline, Paragraph, Passage, Text, Words
from authoring.model.manner import PLAIN, Clearance, Engagement, Manner, Orientation
from authoring.model.procedure import Action, Step
from authoring.model.things import Value

SIDES = {
    "left": "on the left",
    "right": "on the right",
    "front": "at the front",
    "rear": "at the rear",
    "top": "at the top",
    "bottom": "at the bottom",
    "inside": "on the inside",
    "outside": "on the outside",
}
_ARTICLES = frozenset({"the", "its", "their"})
_PREPOSITIONS = frozenset(
    {"at", "in", "on", "from", "behind", "below", "above", "beside", "between", "through", "under"}
)
_WAYS = {"seen": "Seen: ", "felt": "Felt: ", "heard": "Heard: "}


def manners(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what the actions of a step say of their manner; of several actions each is named once, where it begins."""
    for action in step.actions:
        if action.manner is not PLAIN:
            to = _to(action, step, wording) if len(step.actions) > 1 else ()
            for label, passage in _lines(action.manner, volume, wording):
                yield Aside(label, _led(to, passage), close=True)
                to = ()


def _to(action: Action, step: Step, wording: Wording) -> Text:
    """Return which of several actions is meant, by the verb that the instruction uses for it."""
    text = step.text.casefold()
    verb = next((word for word in action.kind.words if word in text), action.kind.words[0])
    return (Words(f"to {verb} "), *all_the(action.what, wording), Words(": "))


def _led(to: Text, passage: Passage) -> Passage:
    first, *rest = passage
    if to and isinstance(first, Paragraph):
        return (Paragraph((*to, *first.text)), *rest)
    return (Paragraph(to), *passage) if to else passage


def _lines(manner: Manner, volume: Volume, wording: Wording) -> Iterator[tuple[str, Passage]]:
    if manner.how:
        yield "How", _one_or_more([wording.line(how) for how in manner.how])
    if manner.orientation is not None:
        yield "Way round", (Paragraph(_way_round(manner.orientation, volume, wording)),)
    if manner.engages:
        yield "Engages", _one_or_more([_engages(one, wording) for one in manner.engages])
    if manner.clear_of:
        yield "Keep clear", _one_or_more([_clear(one, wording) for one in manner.clear_of])
    if manner.force is not None:
        yield from _force(manner.force, volume, wording)
    if manner.confirmed:
        told: list[Inline] = []
        for way, text in manner.confirmed.items():
            told += [*([Words(" ")] if told else []), Words(_WAYS[way], "strong"), *wording.line(text)]
        yield "Done when", (Paragraph(tuple(told)),)
    if manner.because is not None:
        yield "Because", wording.passage(manner.because)


def _one_or_more(entries: list[Text]) -> Passage:
    return (Paragraph(entries[0]),) if len(entries) == 1 else (Bullets(tuple(entries)),)


def _way_round(turned: Orientation, volume: Volume, wording: Wording) -> Text:
    told: list[Text] = []
    if turned.first is not None:
        told.append((*wording.line(turned.first), Words(" first")))
    points: list[Text] = []
    if turned.towards is not None:
        points.append((Words("towards "), *the(turned.towards, wording)))
    if turned.clock is not None:
        points.append((Words(clock(turned.clock)),))
    if turned.side is not None:
        points.append((Words(SIDES[turned.side]),))
    mark = wording.line(turned.mark) if turned.mark is not None else ()
    if points:
        told.append((*mark, *([Words(" ")] if mark else []), *in_turn(points)))
    elif mark:
        told.append(mark)
    if turned.seen_from is not None:
        told.append((Words("seen from "), *wording.line(turned.seen_from)))
    text = in_turn(told)
    equipment = volume.scope.equipment
    if turned.seen_from is None and (turned.clock or turned.side) and equipment is not None and equipment.viewpoint:
        return (*text, Words(f". {equipment.viewpoint}"))
    return text


def clock(hour: str) -> str:
    """Return a position on the face of a clock in words, from an hour such as 12 or 7:30."""
    whole, _, minutes = hour.partition(":")
    return f"at {whole} o'clock" if minutes in {"", "00"} else f"at {hour} on the face of a clock"


def _engages(one: Engagement, wording: Wording) -> Text:
    into: Text = (*wording.line(one.part), Words(" into "))
    other = the(one.other, wording)
    if one.at is None:
        return (*into, *other)
    first, _, rest = one.at.partition(" ")
    # A place with a preposition of its own, such as "at its front", follows the thing; any other is a place of it.
    if first.casefold() in _PREPOSITIONS:
        return (*into, *other, Words(", "), *wording.line(one.at))
    place = rest if first.casefold() in _ARTICLES and rest else one.at
    return (*into, Words("the "), *wording.line(place), Words(" of "), *other)


def _clear(one: Clearance, wording: Wording) -> Text:
    by = (Words(", "), *wording.named(one.by)) if one.by is not None else ()
    return (Words("of "), *the(one.of, wording), *by)


def _force(name: str, volume: Volume, wording: Wording) -> Iterator[tuple[str, Passage]]:
    value = volume.scope.things[name]
    if isinstance(value.thing, Value):
        yield "Force", aside("", f"{value.thing.name}: ", *wording.amount_of(value)).passage
