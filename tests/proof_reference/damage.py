"""One careless edit at a time, as a hurried author makes it: a step lost, moved, or done to the wrong thing."""

from __future__ import annotations

import copy
import random
from collections.abc import Callable, Iterable, Iterator
from typing import Any

from tests.proof_reference.machine import Machine, some_when

Group = dict[str, Any]

_TRIES = 20


def damage(luck: random.Random, machine: Machine, told: Group) -> bool:
    """Make one edit that leaves a readable procedure; tell whether one was found."""
    for _ in range(_TRIES):
        before = copy.deepcopy(told["sections"])
        luck.choice(_EDITS)(luck, machine, told)
        if told["sections"] != before and _readable(told) and _present(machine, told):
            return True
        told["sections"] = before
    return False


def _steps(told: Group) -> list[tuple[list[Group], int]]:
    """Return the place of each step: the list it stands in, and its number there."""
    return [(one["steps"], number) for one in told["sections"] for number in range(len(one["steps"]))]


def _actions(told: Group) -> list[tuple[list[Group], int]]:
    """Return the place of each action, in steps and methods."""
    found = []
    for steps, number in _steps(told):
        for one in steps[number].get("either", [steps[number]]):
            found += [(one["do"], place) for place in range(len(one["do"]))]
    return found


def _outcomes(steps: Iterable[Group]) -> Iterator[Group]:
    """Yield the outcomes of some steps or methods, those of what is noticed as well."""
    for step in steps:
        for value in (value for action in step["do"] for value in action.values()):
            if isinstance(value, dict):
                yield from value.get("outcomes", [])
        yield from step.get("noticed", [])


def _lose_action(luck: random.Random, _: Machine, told: Group) -> None:
    actions, place = luck.choice(_actions(told))
    if len(actions) > 1:
        del actions[place]
    else:
        actions[place] = {"clean": "box"}


def _double_action(luck: random.Random, _: Machine, told: Group) -> None:
    actions, place = luck.choice(_actions(told))
    actions.insert(place, copy.deepcopy(actions[place]))


def _swap_actions(luck: random.Random, _: Machine, told: Group) -> None:
    found = _actions(told)
    number = luck.randrange(len(found))
    (first, here), (second, there) = found[number], found[min(number + luck.choice([1, 1, 2, 5]), len(found) - 1)]
    first[here], second[there] = second[there], first[here]


def _move_step(luck: random.Random, _: Machine, told: Group) -> None:
    steps, number = luck.choice(_steps(told))
    if len(steps) > 1:
        step = steps.pop(number)
        to, place = luck.choice(_steps(told))
        to.insert(place, step)


def _limit_step(luck: random.Random, machine: Machine, told: Group) -> None:
    steps, number = luck.choice(_steps(told))
    steps[number].setdefault("when", some_when(luck, machine.features))


def _skip_step(luck: random.Random, _: Machine, told: Group) -> None:
    steps, number = luck.choice(_steps(told))
    steps[number]["optional"] = "Worth doing in winter."


def _skip_section(luck: random.Random, _: Machine, told: Group) -> None:
    luck.choice(told["sections"])["optional"] = "Worth doing in winter."


def _repeat_section(luck: random.Random, _: Machine, told: Group) -> None:
    luck.choice(told["sections"])["repeat"] = {"times": 2}


_OTHER_VERBS = {
    "fit": ["trial-fit", "hold", "remove", "connect"],
    "remove": ["loosen", "open", "disconnect"],
    "tighten": ["start", "loosen"],
    "start": ["tighten", "clean"],
    "close": ["open", "fit"],
    "open": ["close", "remove"],
    "release": ["lock", "support"],
    "restore": ["isolate"],
    "isolate": ["restore"],
    "lower": ["raise"],
    "fill": ["top-up", "drain"],
    "stop": ["run"],
    "connect": ["disconnect"],
    "seat": ["fit", "trial-fit"],
    "drain": ["top-up"],
}


def _other_verb(luck: random.Random, machine: Machine, told: Group) -> None:
    found = [(actions, place) for actions, place in _actions(told) if set(actions[place]) & set(_OTHER_VERBS)]
    if not found:
        return
    actions, place = luck.choice(found)
    ((verb, value),) = actions[place].items()
    other = luck.choice(_OTHER_VERBS[verb])
    what = value["what"] if isinstance(value, dict) else value
    if not isinstance(what, str) or what == "ring":
        return
    kind = {"loosen": machine.fasteners, "start": machine.fasteners, "clean": {**machine.items, **machine.fasteners}}
    kind |= dict.fromkeys(["open", "close", "connect", "disconnect"], machine.items)
    if what not in kind.get(other, {what}):
        return
    actions[place] = {other: {"what": what, "by": "grease", "until": "plate"} if other == "hold" else what}


def _other_side(luck: random.Random, _: Machine, told: Group) -> None:
    for actions, place in luck.sample(found := _actions(told), len(found)):
        text = str(actions[place])
        if "-rod" in text and "-bush" in text:
            ((verb, value),) = actions[place].items()
            side = luck.choice(["left", "right"])
            actions[place] = {verb: {**value, "on": f"{side}-rod"}}
            return


def _decide_late(luck: random.Random, _: Machine, told: Group) -> None:
    found = _actions(told)
    for number, (actions, place) in enumerate(found[:-1]):
        if "ask" in actions[place] or "measure" in actions[place]:
            later, there = luck.choice(found[number + 1 :])
            actions[place], later[there] = later[there], actions[place]
            return


def _no_longer_replaces(luck: random.Random, _: Machine, told: Group) -> None:
    found = [one for actions, place in _actions(told) for one in actions[place].values() if "replaces" in one]
    if found:
        del luck.choice(found)["replaces"]


def _stray_action(luck: random.Random, _: Machine, told: Group) -> None:
    fill = {"fill": {"what": "oil", "amount": "first-fill"}}
    stray: list[Group] = [fill, {"tighten": "plate-bolts"}, {"run": "engine"}, {"restore": "isolator"}]
    stray += [{"remove": "pump"}, {"top-up": "oil"}, {"drain": "oil"}, {"run": "engine"}]
    actions, place = luck.choice(_actions(told))
    actions.insert(place, luck.choice(stray))


def _too_early(luck: random.Random, _: Machine, told: Group) -> None:
    """Put what must wait right behind what opens or parts something."""
    fill = {"fill": {"what": "oil", "amount": "first-fill"}}
    waiting: list[tuple[Group, Group]] = [
        ({"disconnect": "lamp"}, {"restore": "isolator"}),
        ({"drain": "oil"}, {"run": "engine"}),
        ({"extract": "coolant"}, {"run": "engine"}),
        ({"remove": "gear"}, {"close": "bonnet"}),
        ({"remove": "filter"}, {"close": "bonnet"}),
        ({"loosen": "plate-bolts"}, {"remove": "plate"}),
        ({"drain": "oil"}, fill),
        ({"remove": "drain-plug"}, fill),
        ({"start": "drain-plug"}, fill),
    ]
    found = [(place, late) for place in _actions(told) for early, late in waiting if place[0][place[1]] == early]
    if found:
        (actions, place), late = luck.choice(found)
        actions.insert(place + 1, late)


def _lead_elsewhere(luck: random.Random, machine: Machine, told: Group) -> None:
    plain = [step for steps, number in _steps(told) for step in steps[number].get("either", [steps[number]])]
    found = list(_outcomes(plain))
    whole = [steps[number] for steps, number in _steps(told) if "either" not in steps[number]]
    names = [one["id"] for one in whole if "id" in one]
    if not whole:
        return
    if not names or luck.random() < 0.4:
        to = luck.choice(whole)
        names = [to.setdefault("id", "here")]
    if not found:
        steps, number = luck.choice(_steps(told))
        found = [{"found": "It is wet.", "then": "go-on"}]
        steps.insert(number, {"do": [{"inspect": {"what": "box", "outcomes": [*found, _dry()]}}]})
    one = luck.choice(found)
    one.pop("to", None)
    one.update(luck.choice([{"then": "go-to", "to": luck.choice(names)}, {"then": "stop"}]))
    if luck.random() < 0.3:
        one["when"] = some_when(luck, machine.features)


def _dry() -> Group:
    return {"found": "It is dry.", "then": "go-on"}


def _need(luck: random.Random, _: Machine, told: Group) -> None:
    asked = [{"bonnet": "open"}, {"bonnet": "closed"}, {"engine": "running"}, {"skip": "lowered"}, {"isolator": "live"}]
    asked += [{"lever": "neutral"}, {"oil": "filled"}, {"gear": "fitted"}, {"skip": "free"}, {"plate": "removed"}]
    luck.choice([*told["sections"], *(steps[number] for steps, number in _steps(told))])["needs"] = luck.choice(asked)


def _readable(told: Group) -> bool:
    """Tell whether each short name that is used stands, where it must stand before, before its use."""
    seen: dict[str, Group] = {}
    led: list[tuple[str, Group]] = []
    for section, step in ((one, step) for one in told["sections"] for step in one["steps"]):
        methods = step.get("either", [step])
        when = {**section.get("when", {}), **step.get("when", {})}
        if "either" in step and not set(step) <= {"when", "why", "either"}:
            return False
        asked = {*step.get("if-done", []), *step.get("unless-done", [])}
        if not asked <= set(seen) or any(seen[name] for name in asked):
            return False
        names = [one["id"] for one in methods if "id" in one]
        if set(seen) & set(names):
            return False
        seen |= dict.fromkeys(names, when)
        led += [(one["to"], when) for one in _outcomes(methods) if one["then"] == "go-to"]
    # Where a way leads must be there for every vehicle that goes it.
    return all(to in seen and seen[to] in ({}, when) for to, when in led)


def _present(machine: Machine, told: Group) -> bool:
    """Tell whether each step is for vehicles alone that have what it touches, which another rule asks."""
    for section, step in ((one, step) for one in told["sections"] for step in one["steps"]):
        when = {**section.get("when", {}), **step.get("when", {})}
        for action in (action for method in step.get("either", [step]) for action in method["do"]):
            ((_, value),) = action.items()
            named = [value] if not isinstance(value, dict) else [one for one in value.values() if isinstance(one, str)]
            for thing in (thing for one in named for thing in (one if isinstance(one, list) else [one])):
                has = machine.when(thing)
                if not all(set(when.get(feature, ["any"])) <= set(values) for feature, values in has.items()):
                    return False
    return True


Edit = Callable[[random.Random, Machine, Group], None]

_EDITS: tuple[Edit, ...] = (
    _lose_action,
    _lose_action,
    _double_action,
    _swap_actions,
    _swap_actions,
    _move_step,
    _limit_step,
    _skip_step,
    _skip_section,
    _repeat_section,
    _other_verb,
    _other_verb,
    _other_side,
    _other_side,
    _other_side,
    _other_side,
    _other_side,
    _decide_late,
    _decide_late,
    _decide_late,
    _no_longer_replaces,
    _stray_action,
    _stray_action,
    _too_early,
    _too_early,
    _too_early,
    _lead_elsewhere,
    _lead_elsewhere,
    _need,
)
