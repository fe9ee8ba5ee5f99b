"""What an action changes on one machine."""

from __future__ import annotations

from collections.abc import Mapping

from tests.proof_reference.asked import Action
from tests.proof_reference.state import At, Fact, Machine, State
from tests.proof_reference.table import BACK, EFFECTS, GOING_ON, JOINED, LEVELLING, STATES


def change(action: Action, state: State, machine: Machine, at: At) -> None:
    """Do an action to the machine at a place of the job."""
    verb, thing = action.verb, action.thing
    sides = state.sides
    if verb == "release":
        _release(action.thing, state, at)
    elif verb == "set":
        sides[thing, "position"] = Fact(action.value["position"], verb, at)
    elif verb in EFFECTS and not (verb == "extract" and "amount" in action.value):
        side, value = EFFECTS[verb]
        sides[thing, side] = Fact(value, verb, at, action.value.get("until", ""))
    if verb == "lower" or (verb in {"fit", "connect"} and state.value(thing, "support") in {"supported", "chocked"}):
        sides[thing, "support"] = Fact("free" if verb == "lower" else "carried", verb, at)
    if verb in GOING_ON:
        # Whatever was held until this thing traps it is fast now.
        for key, fact in list(sides.items()):
            if fact.value == "held" and fact.new == thing:
                sides[key] = Fact("fitted", verb, at)
    _keep_account(action, state, machine, at)
    if "replaces" in action.value:
        sides[action.value["replaces"], "where"] = Fact("replaced", verb, at, thing)


def _keep_account(action: Action, state: State, machine: Machine, at: At) -> None:
    """Note what no side tells: what is back, what lies in the bin, what there is room for."""
    verb, thing, sides = action.verb, action.thing, state.sides
    if thing in machine.items and verb in BACK:
        sides[thing, "back"] = Fact("yes", verb, at)
    if verb in {"support", "lock"}:
        state.held[thing] = (*(one for one in state.held.get(thing, ()) if one != verb), verb)
    if verb == "lower" or (verb in {"fit", "connect"} and thing in state.held):
        state.held[thing] = tuple(one for one in state.held.get(thing, ()) if one != "support")
    if verb in {"remove", "disconnect", "isolate", "open"}:
        sides.pop((thing, "back"), None)
    if verb == "disconnect":
        sides[thing, "parted"] = Fact("yes", verb, at)
    if verb in JOINED:
        sides.pop((thing, "parted"), None)
    if verb in {"drain", "extract"}:
        sides[thing, "room"] = Fact("some", verb, at)
    if verb in LEVELLING:
        sides.pop((thing, "room"), None)


def _release(thing: str, state: State, at: At) -> None:
    """Undo what was put there last, a support or a lock; with neither known, free."""
    last = state.held.pop(thing, ())
    if last and last[-1] == "lock":
        state.sides[thing, "lock"] = Fact("unlocked", "release", at)
    else:
        state.sides[thing, "support"] = Fact("free", "release", at)
    if last[:-1]:
        state.held[thing] = last[:-1]


def state_of(states: Mapping[str, str], verb: str, at: At) -> dict[tuple[str, str], Fact]:
    """Return the facts that needs or leaves state, brought about by `verb`, which is empty for how a machine comes."""
    found = {}
    for thing, word in states.items():
        found[thing, STATES.get(word, "position")] = Fact(word, verb, at)
        if word == "drained":
            found[thing, "room"] = Fact("some", verb, at)
    return found


def contradicted(needs: Mapping[str, str], state: State, machine: Machine, *, as_it_comes: bool) -> list[str]:
    """Return the things that need a state and that the last change left in another.

    With `as_it_comes`, what nothing changed is known as well: on, closed, tight, full and live.
    """
    found = []
    for thing, word in needs.items():
        fact = state.sides.get((thing, STATES.get(word, "position")))
        if thing in machine.missing:
            continue
        if fact is None:
            found += [thing] if as_it_comes and word in {"removed", "open", "isolated", "drained"} else []
        elif fact.value not in {word, *_AS_GOOD.get(word, ())}:
            found.append(thing)
    return found


_AS_GOOD = {"fitted": {"tight"}, "removed": {"replaced"}}
