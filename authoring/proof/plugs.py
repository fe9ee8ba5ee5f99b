"""Plugs of a fluid, and whether one of them is not back: an open hole that the fluid runs out of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.model.ends import Side
from authoring.model.library import Scope
from authoring.model.on_and_off import wholes
from authoring.model.things import Equipment, FastenerGroup, Item
from authoring.proof.settings import Setting
from authoring.proof.settled import is_settled

_WORDS: Mapping[str, str] = {
    "removed": "off",
    "loose": "loose",
    "started": "only started",
    "tried": "only tried",
    "held": "only held in its place",
    "open": "open",
}
"""How a plug is that is not back, and how that is said."""


def plugs(equipment: Equipment) -> Iterator[Item | FastenerGroup]:
    """Yield the items and fasteners out of which a fluid runs, or through which it goes in."""
    things: list[Item | FastenerGroup] = [*equipment.items.values(), *equipment.fasteners.values()]
    for thing in things:
        if thing.drains or thing.fills:
            yield thing


def sides_of_plug(plug: str, scope: Scope) -> Iterator[Side]:
    """Yield the sides that tell whether a plug is back: where it is and what it is part of, and its lid."""
    yield from ((one, "where") for one in wholes(plug, scope.things))
    yield plug, "lid"


def open_plug(plug: str, scope: Scope, now: Mapping[Side, Setting]) -> Setting | None:
    """Return the setting by which a plug is not back; None where it is back, or will never be put back.

    The last change of it counts: what was opened may be fitted again.
    """
    if is_settled(plug, scope, now):
        return None
    for whole in wholes(plug, scope.things)[1:]:
        if now[whole, "where"].state == "removed":
            return now[whole, "where"]
    last = max((now[plug, "where"], now[plug, "lid"]), key=lambda one: (one.number, one.state == "open"))
    return last if last.state in _WORDS else None


def in_words(setting: Setting) -> str:
    """Return how a plug is that is not back, in words that follow "is"."""
    return _WORDS[setting.state]
