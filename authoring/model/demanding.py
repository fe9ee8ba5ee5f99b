"""Which step of a job meets which demand of the shop's policy, and for which machines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from weakref import WeakKeyDictionary

from msgspec import Struct

from authoring.model.cooling import burns_from
from authoring.model.course import called_by
from authoring.model.danger import RELIEVED, Dangers, There
from authoring.model.fitments import together
from authoring.model.heated import Heat, as_item
from authoring.model.library import Library, Scope
from authoring.model.meant import Meant, beyond, limit_of, meant_in
from authoring.model.mentions import Mention, of_step, touched
from authoring.model.passes import passes
from authoring.model.policies import EVERYWHERE
from authoring.model.policy import FACTS, Policy
from authoring.model.procedure import Action, Procedure, Section, Step
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item, Shop
from authoring.quantities.quantity import Quantity

_LIFTS = frozenset({"raise", "lower"})
_SECURES = frozenset({"support", "lock"})


class Demand(Struct, frozen=True, eq=False):
    """A step that comes near a thing or touches it, as a policy means.

    `asked` are the fitments for which it does while the danger is there, `eased` those for which an earlier step has
    taken the danger away, `held` those that have passed a hold point of the section before.
    `certain` says that stated facts leave no doubt; what a shop itself demands is always meant.
    `excused` are those for which a limit that burns is the cause, which is found as such; mended, it eases.
    `heat` is to what a step has brought the thing, where that is the danger; a part is then an item for once, with the
    hazards of what is hot.
    """

    policy: Policy
    section: Section
    step: Step
    item: Item
    mention: Mention
    asked: tuple[When, ...]
    eased: tuple[When, ...]
    held: tuple[When, ...]
    certain: bool
    heat: Heat | None = None
    excused: tuple[When, ...] = ()

    @property
    def settled(self) -> tuple[When, ...]:
        """For which fitments there is nothing more to find."""
        return (*self.eased, *self.excused)

    @property
    def near(self) -> bool:
        """Whether the hands only come near to the thing."""
        return self.mention.role == "near"


class _Met(Struct, frozen=True, eq=False):
    """A thing that a step meets: the mention, and the action that touches it; None where it is only near.

    `heat` is set where a step before has heated it.
    """

    item: Item
    mention: Mention
    action: Action | None
    heat: Heat | None = None


class _Here(Struct, frozen=True, eq=False):
    """One step with its section, for which fitments it is done, and the hold points of the section before it."""

    section: Section
    step: Step
    when: When
    held: list[When]
    shop: Shop | None


# As long as a library lives: several rules ask of each procedure, one rule after the other, and then the booklet.
_KNOWN: WeakKeyDictionary[Scope, tuple[Demand, ...]] = WeakKeyDictionary()


def demands(procedure: Procedure, library: Library) -> tuple[Demand, ...]:
    """Return every demand that a procedure meets, in the order of its steps; of a thing met twice in a step the first.

    A step that a way back repeats is asked once more, with what has become dangerous since.
    It is empty where the equipment is unknown. What a procedure that is carried out does is asked of that one.
    """
    scope = library.scope(procedure)
    if scope not in _KNOWN:
        meant = meant_in(scope.equipment, library.shop) if scope.equipment is not None else None
        _KNOWN[scope] = tuple(_demands(procedure, scope, meant)) if meant is not None else ()
    return _KNOWN[scope]


def _demands(procedure: Procedure, scope: Scope, meant: Meant) -> Iterator[Demand]:
    dangers = Dangers(scope)
    dangers.needs(procedure.needs, {})
    inside: Section | None = None
    held: list[When] = []
    for section, step in passes(procedure):
        if section is not inside:
            dangers.needs(section.needs, section.when)
            inside, held = section, []
        here = _Here(section, step, together(section.when, step.when), held, scope.library.shop)
        found: dict[tuple[object, ...], Demand] = {}
        for one in _of_step(here, dangers, scope, meant):
            key = (one.policy.id, one.item.id, *(one.heat.when.items() if one.heat is not None else ()))
            before = found.get(key)
            # What was cooled may be hot again after the next action of the step.
            if before is None or (all(one.eased) and not all(before.eased)):
                found[key] = one
        yield from found.values()


def _of_step(here: _Here, dangers: Dangers, scope: Scope, meant: Meant) -> Iterator[Demand]:
    """Yield what a step meets; what is near is near before, during and after each of its actions."""
    step = here.step
    dangers.needs(step.needs, here.when)
    near = list(_near(step))
    yield from _asked(_met(near, scope, dangers), here, dangers, meant)
    for action in step.actions:
        hands = [(mention, action) for mention in touched(action)]
        if dangers.something_heated or any(meant.of(_item_of(one.name, scope), dangers) for one, _ in hands):
            yield from _asked(_met([*near, *hands], scope, dangers), here, dangers, meant)
        dangers.does(action, here.when)
        _go_through(action, here, dangers, scope)
        after = [*near, *hands] if action.kind.name == "heat" else near
        yield from _asked(_met(after, scope, dangers), here, dangers, meant)
        if action.hold:
            here.held.append(here.when)
    dangers.leaves(step.leaves, here.when)


def _go_through(action: Action, here: _Here, dangers: Dangers, scope: Scope) -> None:
    """Take in what the procedures begin and end that an action carries out, or to which its outcomes lead."""
    for called in called_by(action, scope.procedure, scope.library):
        dangers.goes_through(called, here.when)
    for outcome in action.outcomes:
        other = scope.library.procedures.get(outcome.to or "") if outcome.then == "do" else None
        if other is not None and other.equipment == scope.procedure.equipment:
            dangers.may_go_through(other, together(here.when, outcome.when))


def _near(step: Step) -> Iterator[tuple[Mention, None]]:
    if step.near or step.holding is not None:
        yield from ((mention, None) for mention in of_step(step) if mention.role in {"near", "hold"})


def _item_of(name: str, scope: Scope) -> str:
    """Return the name of what the hands are at; fasteners are touched on the item that they hold."""
    named = scope.things.get(name)
    thing = named.thing if named is not None else None
    return thing.on or name if isinstance(thing, FastenerGroup) else name


def _met(mentions: Iterable[tuple[Mention, Action | None]], scope: Scope, dangers: Dangers) -> Iterator[_Met]:
    """Yield what is met: first what a step has heated, which may be a part or a choice as well, then each item."""
    for mention, action in mentions:
        name = _item_of(mention.name, scope)
        for one in dangers.hot_with(mention.name, name) if dangers.something_heated else ():
            hot = as_item(one, scope)
            yield from (_Met(hot, mention, action, heat) for heat in dangers.heated(one) if hot is not None)
        named = scope.things.get(name)
        if named is not None and isinstance(named.thing, Item):
            yield _Met(named.thing, mention, action)


def _asked(met: Iterable[_Met], here: _Here, dangers: Dangers, meant: Meant) -> Iterator[Demand]:
    for one in met:
        if one.heat is None:
            policies = meant.of(one.item.id, dangers)
        else:
            policies = [policy for policy in meant.hotter if _burns(policy, one.item, one.heat, here.shop)]
        for policy in policies:
            found = _demand(policy, one, here, dangers) if _is_act(policy, one) else None
            if found is not None:
                yield found


def _burns(policy: Policy, item: Item, heat: Heat, shop: Shop | None) -> bool:
    """Tell whether a policy speaks of what a step has heated and the steps have not let cool since."""
    limit = limit_of(item, policy.bounds["hotter-than"])
    others = (beyond(item, key, bound) for key, bound in policy.bounds.items() if key != "hotter-than")
    meant = policy.by_facts or policy.hazard is None
    return meant and all(others) and heat.burns_at(limit) and not heat.is_cold(item, limit, shop)


def _is_act(policy: Policy, met: _Met) -> bool:
    acts = policy.acts or EVERYWHERE
    if met.action is None:
        return ("near" if met.mention.role == "near" else "touch") in acts
    if policy.only_while == "raised" and met.action.kind.name in _aside(policy):
        return False
    return "touch" in acts or (met.mention.role == "what" and met.action.kind.name in acts)


def _aside(policy: Policy) -> frozenset[str]:
    """Return the actions that are no work at what is up: who lifts or lowers stands aside.

    To put the prop in is the cure, so a default asks nothing of it; a shop that names the default means that as well.
    """
    return _LIFTS if policy.where is not None else _LIFTS | _SECURES


def _demand(policy: Policy, met: _Met, here: _Here, dangers: Dangers) -> Demand | None:
    """Return the demand, or None where nothing runs or is up that would be the danger."""
    heat = met.heat
    asked: tuple[When, ...] = (together(here.when, met.item.when, heat.when if heat is not None else {}),)
    eased: list[When] = []
    excused: Sequence[When] = ()
    for there in _while(policy, met.item, here, dangers):
        if there is None:
            return None
        asked = tuple(together(one, other) for one in asked for other in there.on)
        eased += there.off
    for key, bound in policy.bounds.items():
        if key == "hotter-than":
            eased += dangers.cooled(met.item.id, limit_of(met.item, bound))
            excused = _bylimit_of(met.item, bound, dangers)
        elif FACTS[key][0] in RELIEVED:
            eased += dangers.relieved(FACTS[key][0], met.item)
    certain = (
        not policy.by_facts or policy.where is not None or heat is not None or _certain(policy, here.step, dangers)
    )
    return Demand(
        policy=policy,
        section=here.section,
        step=here.step,
        item=met.item,
        mention=met.mention,
        asked=asked,
        eased=tuple(eased),
        held=tuple(here.held),
        certain=certain,
        heat=heat,
        excused=tuple(excused),
    )


def _bylimit_of(item: Item, bound: Quantity | None, dangers: Dangers) -> Sequence[When]:
    """Return for which fitments a need lets a hand on what still burns, and the bound of a policy is no lower.

    That is an error only where somebody stated how long the thing is touched, so that nothing else excuses.
    """
    burns = burns_from(item.hot) if item.hot is not None and item.hot.touch is not None else None
    return dangers.still_burns(item.id, burns) if burns is not None and limit_of(item, bound) >= burns else ()


def _while(policy: Policy, item: Item, here: _Here, dangers: Dangers) -> Iterator[There | None]:
    """Yield for which fitments each danger that the policy is limited to is there; None for one that is not."""
    hazard = here.shop.hazards.get(policy.hazard or "") if here.shop is not None else None
    if policy.only_while == "running" or (hazard is not None and hazard.only_while == "running"):
        # Where nothing was said, it may run; a default asks only where it is known to.
        may = dangers.unknown and not policy.by_facts
        yield dangers.running(here.when) or (There((here.when,)) if may else None)
    if policy.only_while == "raised":
        yield dangers.raised(item, here.when)


def _certain(policy: Policy, step: Step, dangers: Dangers) -> bool:
    """Tell whether stated facts leave no doubt: a thing may have cooled, and what is at hand may carry the load."""
    return dangers.ran if "hotter-than" in policy.bounds else not ("heavier-than" in policy.bounds and step.uses)
