"""Which safety messages are in force at a step: those that its author called, and those that the policy places there.

A message is in force at a step if it is the step's own, its section's or the whole job's.
Rules and booklet both ask here, so that they cannot disagree.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from weakref import WeakKeyDictionary

from msgspec.structs import replace

from authoring.model.brackets import brackets
from authoring.model.demanding import Demand, demands
from authoring.model.fitments import together
from authoring.model.lacking import bare
from authoring.model.library import Library, Scope
from authoring.model.policy import Policy
from authoring.model.procedure import Procedure, Section, Step
from authoring.model.specification import When
from authoring.model.texts import prose_of_message
from authoring.model.things import Item, Message

Placed = Mapping[str, tuple[Message, ...]]


def in_force(procedure: Procedure, section: Section, step: Step, library: Library) -> tuple[Message, ...]:
    """Return the messages that are read before a step is done; a name that is unknown is passed over."""
    scope = library.scope(procedure)
    return (*_called(section, step, scope), *placed_by_policy(procedure, library).get(step.id, ()))


_KNOWN: WeakKeyDictionary[Scope, Placed] = WeakKeyDictionary()


def placed_by_policy(procedure: Procedure, library: Library) -> Placed:
    """Return, by the id of a step, the messages that the policy places at it, each for those machines that lack one.

    A message that names something this procedure does not know is not placed: its reader could not find the thing.
    """
    scope = library.scope(procedure)
    if scope not in _KNOWN:
        _KNOWN[scope] = _placed(procedure, library, scope)
    return _KNOWN[scope]


def _placed(procedure: Procedure, library: Library, scope: Scope) -> Placed:
    found: dict[str, list[Message]] = {}
    for demand in demands(procedure, library):
        message = scope.safety.get(demand.policy.message or "")
        if message is None or not speaks(demand.policy, demand.item, message, scope) or not _readable(message, scope):
            continue
        there = found.setdefault(demand.step.id, [])
        for lacking in _lacking(demand, there, message, scope):
            there.append(replace(message, when=together(message.when, lacking)))
    return {step: _each_once(messages, scope) for step, messages in found.items() if messages}


def speaks(policy: Policy, item: Item, message: Message, scope: Scope) -> bool:
    """Tell whether a message is of the kind that a policy asks for; a default takes one with its own sign as well."""
    signed = policy.hazard is None and policy.sign != "" and message.sign == policy.sign
    return signed or (message.of is not None and message.of in kinds_of(policy, item, scope))


def kinds_of(policy: Policy, item: Item, scope: Scope) -> frozenset[str]:
    """Return the kinds of hazard that a policy is about at an item.

    A default knows none of the shop's names: it means the kinds of which some message has its sign, those of the item
    of which no message has another one, and for what runs those of the item that are there only while it does.
    """
    if policy.hazard is not None:
        return frozenset({policy.hazard})
    if not policy.sign:
        return frozenset()
    shop = scope.library.shop
    hazards = shop.hazards if shop is not None else {}
    moving = {name for name in item.hazards if name in hazards and hazards[name].only_while == "running"}
    signs = [(one.of, one.sign) for one in scope.safety.values() if one.of is not None]
    signed = {kind for kind, sign in signs if sign == policy.sign}
    others = {kind for kind, sign in signs if sign not in {"", "general", policy.sign}}
    plain = {name for name in item.hazards if name not in others | moving}
    return frozenset(signed | plain | (moving if policy.only_while == "running" else set()))


def told_by_policy(procedure: Procedure, library: Library) -> frozenset[tuple[str, str, str]]:
    """Return the step, item and kind of hazard of every demand for a message, of which the policy tells itself.

    Where the danger was taken away for all, it asks nothing, and so has nothing to tell.
    """
    scope = library.scope(procedure)
    return frozenset(
        (demand.step.id, demand.item.id, kind)
        for demand in demands(procedure, library)
        if demand.policy.asks_message and demand.certain and all(demand.eased)
        for kind in kinds_of(demand.policy, demand.item, scope)
    )


def spoken(demand: Demand, library: Library, procedure: Procedure) -> tuple[Message, ...]:
    """Return the messages in force at the step of a demand that are of its kind."""
    scope = library.scope(procedure)
    there = in_force(procedure, demand.section, demand.step, library)
    return tuple(one for one in there if speaks(demand.policy, demand.item, one, scope))


def _called(section: Section, step: Step, scope: Scope) -> Iterator[Message]:
    for name in dict.fromkeys((*(scope.procedure.hazards or ()), *section.safety, *step.safety)):
        if name in scope.safety:
            yield scope.safety[name]


def _lacking(demand: Demand, there: Sequence[Message], message: Message, scope: Scope) -> Sequence[When]:
    """Return for which fitments nothing of the kind is said yet; each condition goes with the message's own."""
    said = [
        one for one in _called(demand.section, demand.step, scope) if speaks(demand.policy, demand.item, one, scope)
    ]
    said += [one for one in there if speaks(demand.policy, demand.item, one, scope)]
    if scope.vehicle is None:
        return ()
    asked = [together(one, message.when) for one in demand.asked]
    given = (*(one.when for one in said), *demand.settled)
    return bare(scope.vehicle, scope.procedure.covers, asked, given)


def _readable(message: Message, scope: Scope) -> bool:
    names = (one.name for prose in prose_of_message(message) for one in brackets(prose.text))
    return all(name in scope.things for name in names)


def _each_once(messages: Sequence[Message], scope: Scope) -> tuple[Message, ...]:
    """Return each message once; one that is placed for several groups of machines is told to all it is for."""
    found: dict[str, Message] = {}
    for message in messages:
        found[message.id] = scope.safety[message.id] if message.id in found else message
    return tuple(found.values())
