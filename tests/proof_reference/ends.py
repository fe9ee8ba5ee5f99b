"""What is asked of a machine when the job is over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tests.proof_reference.asked import Settled, settled
from tests.proof_reference.script import Script
from tests.proof_reference.state import At, Machine, Selection, State, holds
from tests.proof_reference.told import Group

_LEFT = {
    ("lid", "open"),
    ("energy", "isolated"),
    ("support", "supported"),
    ("lock", "locked"),
    ("height", "raised"),
    ("motion", "running"),
}


def at_the_end(state: State, machine: Machine, stated: Settled, tried: set[str]) -> Iterator[tuple[str, At, str]]:
    """Yield what is not put back or filled: the rule, the step that did it, and the thing.

    `tried` are the parts that the job itself put on first; they owe nothing when they come off again.
    """
    for (thing, side), fact in state.sides.items():
        if (
            thing in machine.missing
            or thing in tried
            or not fact.verb
            or settled(thing, fact.value, state, (machine, stated))
        ):
            continue
        if (side, fact.value) == ("fluid", "drained"):
            yield "drained-not-filled", fact.at, thing
        elif side == "where" and thing in machine.fasteners:
            if fact.value not in {"tight", "replaced", "discarded", "empty"}:
                yield "never-put-back", fact.at, thing
        elif (side, fact.value) == ("where", "removed") or (side, fact.value) in _LEFT:
            back = (thing, "back") in state.sides and side in {"where", "energy", "lid"}
            if not back:
                yield "never-put-back", fact.at, thing


def bypassed(root: Script, scripts: Mapping[str, Script], state: State, selection: Selection) -> Iterator[int]:
    """Yield the line of each step of the job at top with a hold point that had to be passed and was not."""
    for section in root.told["sections"]:
        if _had(root, section, state, selection):
            for step in section["steps"]:
                yield from _of_step(root, scripts, step, (state, selection))


def _of_step(
    script: Script, scripts: Mapping[str, Script], step: Group, whom: tuple[State, Selection]
) -> Iterator[int]:
    state, selection = whom
    if not holds(step.get("when"), selection):
        return
    methods = [one for one in step.get("either", [step]) if _had(script, one, state, selection)]
    taken = [one for one in methods if ("taken", script.number, str(one.first)) in state.marks]
    for method in taken or methods:
        for number, action in enumerate(method["do"]):
            ((verb, value),) = action.items()
            if isinstance(value, Group) and value.get("hold") == "true":
                if ("passed", script.number, str(method.first), str(number)) not in state.marks:
                    yield method.first
            elif verb == "carry-out" and any(bypassed(scripts[_named(value)], scripts, state, selection)):
                yield method.first


def _named(value: Group | str) -> str:
    return value["what"] if isinstance(value, Group) else value


def _had(script: Script, one: Group, state: State, selection: Selection) -> bool:
    """Tell whether this way of this machine has a section or step, and did not skip it."""
    if not holds(one.get("when"), selection) or not follows(one, script.number, state):
        return False
    return ("skipped", script.number, str(one.first)) not in state.marks


def follows(one: Group, number: str, state: State) -> bool:
    """Tell whether a step of a procedure is done after those that were done so far."""
    asked, barred = one.get("if-done", []), one.get("unless-done", [])
    if asked and not any(("done", number, name) in state.marks for name in asked):
        return False
    return not any(("done", number, name) in state.marks for name in barred)
