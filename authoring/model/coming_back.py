"""What comes off in a job and goes back on as it was: on which machines, and at which action first."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct

from authoring.model.course import Act, acts
from authoring.model.library import Library
from authoring.model.mentions import Mention, touched
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.model.ways import Shown, Ways, ways_of


class Return(Struct, frozen=True, eq=False):
    """A thing goes back on: where it is named there, and on which machines."""

    thing: Item | FastenerGroup
    mention: Mention
    shown: Shown


class _Event(Struct, frozen=True, eq=False):
    """A thing comes off, goes to waste or goes on."""

    kind: str
    mention: Mention
    act: Act


def returns(
    procedure: Procedure,
    library: Library,
    asked: Callable[[Item | FastenerGroup], bool],
    off: frozenset[str] = TAKES_OFF,
) -> Iterator[Return]:
    """Yield where each thing that is asked about first goes back on after it came off and was not discarded.

    `off` are the actions that count as coming off.
    Steps are taken as they are written, though an outcome may skip or repeat some.
    """
    equipment = library.scope(procedure).equipment
    things: list[Item | FastenerGroup] = []
    if equipment is not None:
        things = [*equipment.items.values(), *equipment.fasteners.values()]
    if not any(asked(thing) for thing in things):
        return
    ways = ways_of(procedure, library)
    if ways is not None:
        for thing, events in _histories(procedure, library, off):
            if asked(thing):
                yield from _again(thing, events, ways)


def _histories(
    procedure: Procedure, library: Library, off: frozenset[str]
) -> Iterator[tuple[Item | FastenerGroup, list[_Event]]]:
    """Yield each thing that a procedure handles itself, with what is done to it in order."""
    scope = library.scope(procedure)
    histories: dict[str, list[_Event]] = {}
    for act in acts(procedure, library):
        kind = _kind(act.action.kind.name, off) if act.own else ""
        for mention in touched(act.action) if kind else ():
            if mention.role == "what":
                histories.setdefault(mention.name, []).append(_Event(kind, mention, act))
    for name, events in histories.items():
        thing = scope.things[name].thing if name in scope.things else None
        if isinstance(thing, Item | FastenerGroup):
            yield thing, events


def _kind(verb: str, off: frozenset[str]) -> str:
    if verb in PUTS_ON:
        return "on"
    return "off" if verb in off else "waste" if verb == "discard" else ""


def _again(thing: Item | FastenerGroup, events: Sequence[_Event], ways: Ways) -> Iterator[Return]:
    space = ways.space([event.act for event in events])
    if space is None:
        return
    off, never = 0, space.every
    for event in events:
        done = ways.cells(event.act, space)
        again = done & off & never
        if event.kind == "on" and again:
            yield Return(thing, event.mention, ways.shown(again, space))
            never &= ~again  # only the first counts
        off = off | done if event.kind == "off" else off & ~done
