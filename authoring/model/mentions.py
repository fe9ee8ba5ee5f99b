"""Every place where a procedure calls something by its short name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from msgspec import Struct

from authoring.diagnostics.diagnostic import Span
from authoring.model.action_kind import Kind
from authoring.model.brackets import brackets
from authoring.model.procedure import Action, Procedure, Step
from authoring.model.texts import Prose, prose_of, prose_of_message
from authoring.model.things import Message
from authoring.source.document import Where


class Mention(Struct, frozen=True):
    """One use of a name.

    `wants` says what it must be: "message" for a safety message, "thing" for anything named.
    `kinds` are the kinds of thing that fit there; empty means any.
    `role` is text, what, another role of an action, with, figures, safety, hazards, part, callout or to.
    """

    name: str
    where: Where
    keys: tuple[str | int, ...]
    wants: str
    kinds: frozenset[Kind]
    role: str
    bracket: tuple[str, int] | None = None

    @property
    def span(self) -> Span:
        """The stretch of the name, or of its bracket inside a text."""
        if self.bracket is not None:
            return self.where.find(self.bracket[0], *self.keys, nth=self.bracket[1])
        return self.where.of(*self.keys)


_ANY: frozenset[Kind] = frozenset()
_USED = frozenset({Kind.TOOL, Kind.CONSUMABLE})
_FOLLOWED = {"do": frozenset({Kind.PROCEDURE}), "go-to": frozenset({Kind.STEP, Kind.SECTION})}
_POINTED_AT = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE, Kind.TOOL, Kind.CONSUMABLE})


def mentions(procedure: Procedure) -> Iterator[Mention]:
    """Yield every mention of a name in a procedure."""
    yield from _in_texts(prose_of(procedure))
    yield from _list(procedure.where, "hazards", procedure.hazards or (), _ANY, "message")
    for choice in procedure.choices.values():
        for part in choice.parts:
            yield Mention(part.part, part.where, ("part",), "thing", frozenset({Kind.PART}), "part")
    for figure in procedure.figures.values():
        for callout in figure.callouts:
            yield Mention(callout.on, callout.where, ("on",), "thing", _POINTED_AT, "callout")
    for section in procedure.sections:
        yield from _list(section.where, "safety", section.safety, _ANY, "message")
    for _, step in procedure.steps():
        yield from of_step(step)


def in_messages(messages: Iterable[Message]) -> Iterator[Mention]:
    """Yield the mentions in the texts of safety messages, such as those of the shop that a procedure calls."""
    for message in messages:
        yield from _in_texts(prose_of_message(message))


def _in_texts(texts: Iterable[Prose]) -> Iterator[Mention]:
    for prose in texts:
        for one in brackets(prose.text):
            yield Mention(one.name, prose.where, prose.keys, "thing", _ANY, "text", (one.typed, one.nth))


def _list(
    where: Where, key: str, names: tuple[str, ...], kinds: frozenset[Kind], wants: str = "thing"
) -> Iterator[Mention]:
    for place, name in enumerate(names):
        yield Mention(name, where, (key, place), wants, kinds, key)


def of_step(step: Step) -> Iterator[Mention]:
    """Yield the mentions in a step's data, its texts left out."""
    yield from _list(step.where, "safety", step.safety, _ANY, "message")
    yield from _list(step.where, "with", step.uses, _USED)
    yield from _list(step.where, "figures", step.figures, frozenset({Kind.FIGURE}))
    for action in step.actions:
        yield from of_action(action)


def of_action(action: Action) -> Iterator[Mention]:
    """Yield the mentions in one action: what it is done to, its other roles, and where its outcomes lead."""
    entry = Where(action.where.document, action.where.path[:-1])
    for place, name in enumerate(action.what):
        yield Mention(name, entry, _keys_of_what(action, place), "thing", action.kind.what.kinds, "what")
    for role, name in action.roles.items():
        yield Mention(name, action.where, (role,), "thing", action.kind.roles[role].kinds, role)
    for outcome in action.outcomes:
        if outcome.to is not None:
            yield Mention(outcome.to, outcome.where, ("to",), "thing", _FOLLOWED.get(outcome.then, _ANY), "to")


def _keys_of_what(action: Action, place: int) -> tuple[str | int, ...]:
    given: Any = action.where.document.data
    for key in action.where.path:
        given = given[key]
    name = action.where.path[-1]
    if isinstance(given, dict):
        return (name, "what") if isinstance(given["what"], str) else (name, "what", place)
    return (name,) if isinstance(given, str) else (name, place)
