"""Lines to write readings on: one for each thing that is measured, for each of its fasteners and at each place."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Text, Words
from authoring.model.library import Scope
from authoring.model.procedure import Action, Choice
from authoring.model.things import FastenerGroup


def readings(action: Action, unit: str, scope: Scope, wording: Wording) -> tuple[Text, ...]:
    """Return a line for each reading of a checkpoint; none where it is met by the senses.

    What is counted has one number. The sizes of a part choice have lines of their own.
    """
    if action.way not in {"measured", "counted"}:
        return ()
    single = action.way == "counted" or any(isinstance(scope.things[name].thing, Choice) for name in action.what)
    found = [] if single else list(_each(action, scope))
    if len(found) < 2:  # noqa: PLR2004  # a number tells one of several
        return ((Blank(unit),),)
    return tuple(_line(name, number, unit, action, wording) for name, number in found)


def _each(action: Action, scope: Scope) -> Iterator[tuple[str, int]]:
    """Yield each reading: of what it is, and its number among those of that thing; 0 where it has one."""
    places = int(action.details.get("places", 1))
    for name in action.what:
        thing = scope.things[name].thing
        many = places * (thing.count if isinstance(thing, FastenerGroup) else 1)
        yield from ((name, number) for number in range(1, many + 1)) if many > 1 else ((name, 0),)


def _line(name: str, number: int, unit: str, action: Action, wording: Wording) -> Text:
    # One thing is named by the line above; several are told apart by their names.
    named = wording.named(name) if len(action.what) > 1 else ()
    told = wording.plain(name)
    label = f"{told}, number {number}" if number else told
    blank = Blank(unit, f"{label}, in {unit}" if unit else label)
    return (*named, *([Words(f" {number}" if named else str(number))] if number else []), Words(" "), blank)
