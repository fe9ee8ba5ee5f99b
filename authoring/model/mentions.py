"""Every place where a library calls something by its short name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from msgspec import Struct

from authoring.diagnostics.diagnostic import Span
from authoring.model.action_kind import Kind
from authoring.model.brackets import brackets
from authoring.model.demands import Need
from authoring.model.language.states import STATES
from authoring.model.manner import PLAIN
from authoring.model.procedure import Action, Choice, Outcome, Procedure, Section, Step
from authoring.model.texts import Prose, prose_of, prose_of_message
from authoring.model.things import Equipment, FastenerGroup, Item, Message, Shop
from authoring.source.document import Where


class Mention(Struct, frozen=True):
    """One use of a name.

    `wants` says what it must be: "message" for a safety message, "hazard" for a kind of hazard of the shop's register,
    "thing" for anything named.
    `kinds` are the kinds of thing that fit there; empty means any.
    `role` is text, what, another role of an action, or the key at which the name stands; state for a state that is
    none of the language's own: the position of an item or the name of a value; after for a procedure that follows
    as a job of its own.
    """

    name: str
    where: Where
    keys: tuple[str | int, ...]
    wants: str
    kinds: frozenset[Kind]
    role: str
    bracket: tuple[str, int] | None = None
    is_key: bool = False

    @property
    def span(self) -> Span:
        """The stretch of the name, or of its bracket inside a text."""
        if self.bracket is not None:
            return self.where.find(self.bracket[0], *self.keys, nth=self.bracket[1])
        return self.where.key(*self.keys) if self.is_key else self.where.of(*self.keys)


_ANY: frozenset[Kind] = frozenset()
_USED = frozenset({Kind.TOOL, Kind.CONSUMABLE})
_STEP = frozenset({Kind.STEP})
_PART = frozenset({Kind.PART})
_TOOL = frozenset({Kind.TOOL})
_VALUE = frozenset({Kind.VALUE})
_ITEM = frozenset({Kind.ITEM})
_FLUID = frozenset({Kind.FLUID})
_FASTENERS = frozenset({Kind.FASTENERS})
_ADDED = frozenset({Kind.PART, Kind.FASTENERS, Kind.CHOICE})
_ON_MACHINE = frozenset({Kind.ITEM, Kind.FASTENERS})
_STATED = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID})
_FITTED = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})
_PROCEDURE = frozenset({Kind.PROCEDURE})
_FOLLOWED = {"do": _PROCEDURE, "do-after": _PROCEDURE, "go-to": frozenset({Kind.STEP, Kind.SECTION})}
_POINTED_AT = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.FLUID, Kind.PART, Kind.CHOICE, Kind.TOOL, Kind.CONSUMABLE})


def mentions(procedure: Procedure) -> Iterator[Mention]:
    """Yield every mention of a name in a procedure."""
    yield from _in_texts(prose_of(procedure))
    yield from _list(procedure.where, "hazards", procedure.hazards or (), _ANY, "message")
    for condition in procedure.conditions or ():
        yield from _one(condition.where, "by", condition.by, _FOLLOWED["do"])
    yield from _states(procedure.needs)
    yield from _states(procedure.leaves)
    for change in procedure.modifications.values():
        yield from _list(change.where, "adds", change.adds, _ADDED)
        yield from _list(change.where, "leaves-out", change.leaves_out, _ON_MACHINE)
        for old, new in change.replaces.items():
            yield Mention(old, change.where, ("replaces", old), "thing", _FITTED, "replaces", is_key=True)
            yield Mention(new, change.where, ("replaces", old), "thing", _ADDED, "replaces")
    for choice in procedure.choices.values():
        yield from _of_choice(choice)
    for figure in procedure.figures.values():
        for callout in figure.callouts:
            yield Mention(callout.on, callout.where, ("on",), "thing", _POINTED_AT, "callout")
    for message in procedure.safety.values():
        yield from _of_message(message)
    for section in procedure.sections:
        yield from _of_section(section)
        for step in section.steps:
            yield from of_step(step)


def of_equipment(equipment: Equipment) -> Iterator[Mention]:
    """Yield every mention of a name in an equipment file."""
    for item in equipment.items.values():
        yield from _list(item.where, "covers", item.covers, _ON_MACHINE)
        yield from _one(item.where, "part-of", item.part_of, _ITEM)
        yield from _one(item.where, "twin", item.twin, _ITEM)
        yield from _list(item.where, "hazards", item.hazards, _ANY, "hazard")
        yield from _plug(item)
    for group in equipment.fasteners.values():
        yield from _one(group.where, "on", group.on, _ITEM)
        yield from _one(group.where, "among", group.among, _ITEM)
        yield from _one(group.where, "twin", group.twin, _FASTENERS)
        yield from _list(group.where, "turned-with", group.turned_with, _TOOL)
        yield from _plug(group)
    for fluid in equipment.fluids.values():
        yield from _one(fluid.where, "in", fluid.held_in, _ITEM)
        yield from _list(fluid.where, "mixes-with", fluid.mixes_with, _FLUID)


def _plug(one: Item | FastenerGroup) -> Iterator[Mention]:
    yield from _list(one.where, "drains", one.drains, _FLUID)
    yield from _list(one.where, "fills", one.fills, _FLUID)
    yield from _list(one.where, "seals-with", one.seals_with, _PART)


def of_policies(shop: Shop) -> Iterator[Mention]:
    """Yield every mention of a name in a shop's policy."""
    for policy in shop.policy.values():
        if policy.where is not None:
            yield from _one(policy.where, "hazard", policy.hazard, _ANY, "hazard")
            yield from _one(policy.where, "message", policy.message, _ANY, "message")
            yield from _list(policy.where, "wear", policy.wear, _USED)


def in_messages(messages: Iterable[Message]) -> Iterator[Mention]:
    """Yield the mentions in safety messages, such as those of the shop that a procedure calls."""
    for message in messages:
        yield from _in_texts(prose_of_message(message))
        yield from _of_message(message)


def _of_message(message: Message) -> Iterator[Mention]:
    yield from _one(message.where, "of", message.of, _ANY, "hazard")


def _of_choice(choice: Choice) -> Iterator[Mention]:
    for part in choice.parts:
        yield Mention(part.part, part.where, ("part",), "thing", _PART, "part")
        yield from _list(part.where, "equal", part.equal, _PART)


def _of_section(section: Section) -> Iterator[Mention]:
    yield from _list(section.where, "safety", section.safety, _ANY, "message")
    yield from _one(section.where, "bench", section.bench, _ITEM)
    yield from _states(section.needs)
    yield from _outcomes(section.noticed)


def _in_texts(texts: Iterable[Prose]) -> Iterator[Mention]:
    for prose in texts:
        for one in brackets(prose.text) if prose.has_names else ():
            yield Mention(one.name, prose.where, prose.keys, "thing", _ANY, "text", (one.typed, one.nth))


def _list(
    where: Where, key: str, names: tuple[str, ...], kinds: frozenset[Kind], wants: str = "thing"
) -> Iterator[Mention]:
    for place, name in enumerate(names):
        yield Mention(name, where, (key, place), wants, kinds, key)


def _one(where: Where, key: str, name: str | None, kinds: frozenset[Kind], wants: str = "thing") -> Iterator[Mention]:
    if name is not None:
        yield Mention(name, where, (key,), wants, kinds, key)


def _states(needs: Iterable[Need]) -> Iterator[Mention]:
    for need in needs:
        role = str(need.where.path[-1])
        yield Mention(need.thing, need.where, (need.thing,), "thing", _STATED, role, is_key=True)
        if need.state not in STATES:
            yield Mention(need.state, need.where, (need.thing,), "thing", _ANY, "state")


def of_step(step: Step) -> Iterator[Mention]:
    """Yield the mentions in a step's data, its texts left out."""
    yield from _list(step.where, "safety", step.safety, _ANY, "message")
    yield from _list(step.where, "with", step.uses, _USED)
    yield from _list(step.where, "figures", step.figures, frozenset({Kind.FIGURE}))
    yield from _list(step.where, "if-done", step.if_done, _STEP)
    yield from _list(step.where, "unless-done", step.unless_done, _STEP)
    yield from _list(step.where, "near", step.near, _ITEM)
    yield from _list(step.where, "leave", step.leave, _FITTED)
    yield from _states(step.needs)
    yield from _states(step.leaves)
    if step.holding is not None:
        yield from _list(step.holding.where, "hold", step.holding.hold, _POINTED_AT)
    if step.deadline is not None:
        yield Mention(step.deadline.start, step.deadline.where, ("from",), "thing", _STEP, "from")
        yield Mention(step.deadline.within, step.deadline.where, ("within",), "thing", _VALUE, "within")
    for action in step.actions:
        yield from of_action(action)
    yield from _outcomes(step.noticed)


def of_action(action: Action) -> Iterator[Mention]:
    """Yield the mentions in one action: what it is done to, its other roles and manner, and where outcomes lead."""
    yield from touched(action)
    if action.manner is not PLAIN:
        yield from _of_manner(action)
    yield from _outcomes(action.outcomes)


def touched(action: Action) -> Iterator[Mention]:
    """Yield the mentions of what an action is done to and of its other roles."""
    entry = Where(action.where.document, action.where.path[:-1])
    for place, name in enumerate(action.what):
        yield Mention(name, entry, _keys_of_what(action, place), "thing", action.kind.what.kinds, "what")
    for role, name in action.roles.items():
        yield Mention(name, action.where, (role,), "thing", action.kind.roles[role].kinds, role)


def _of_manner(action: Action) -> Iterator[Mention]:
    manner = action.manner
    if manner.orientation is not None:
        yield from _one(manner.orientation.where, "towards", manner.orientation.towards, _FITTED | {Kind.FLUID})
    for engagement in manner.engages:
        yield Mention(engagement.other, engagement.where, ("with",), "thing", _FITTED, "engages")
    for clearance in manner.clear_of:
        yield Mention(clearance.of, clearance.where, ("of",), "thing", _FITTED, "clear-of")
        yield from _one(clearance.where, "by", clearance.by, _VALUE)
    yield from _one(action.where, "force", manner.force, _VALUE)


def _outcomes(outcomes: Iterable[Outcome]) -> Iterator[Mention]:
    for outcome in outcomes:
        yield from _list(outcome.where, "bears-on", outcome.bears_on, _POINTED_AT)
        if outcome.to is not None:
            role = "after" if outcome.then == "do-after" else "to"
            yield Mention(outcome.to, outcome.where, ("to",), "thing", _FOLLOWED.get(outcome.then, _ANY), role)


def _keys_of_what(action: Action, place: int) -> tuple[str | int, ...]:
    given = action.where.data
    name = action.where.path[-1]
    if isinstance(given, dict):
        return (name, "what") if isinstance(given["what"], str) else (name, "what", place)
    return (name,) if isinstance(given, str) else (name, place)
