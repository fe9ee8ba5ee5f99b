"""What makes a job branch: methods, checkpoints, steps that may be skipped, things noticed, sections done again."""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import Any

from tests.proof_reference.machine import Machine, some_when

Group = dict[str, Any]


def decorate(luck: random.Random, machine: Machine, told: Group, carried: list[str]) -> None:
    """Put up to four branches into a procedure, none of which changes what becomes of the machine."""
    for number in range(luck.choice([0, 1, 1, 2, 2, 3, 4])):
        place = _Place(luck, machine, told["sections"], f"s{number}")
        place.carried = carried
        luck.choice(_DECORATIONS)(place)


class _Place:
    """Where in a procedure a branch is put, and a short name for its step."""

    def __init__(self, luck: random.Random, machine: Machine, sections: list[Group], name: str) -> None:
        """Choose a place in some sections."""
        self.luck = luck
        self.machine = machine
        self.carried: list[str] = []
        self.name = name
        self.sections = sections
        self.steps: list[Group] = luck.choice(self.sections)["steps"]
        self.at = luck.randint(0, len(self.steps))

    def put(self, *steps: Group) -> None:
        """Insert steps here."""
        self.steps[self.at : self.at] = steps

    def plain(self) -> list[Group]:
        """Return the steps of this section that are no choice of methods."""
        return [one for one in self.steps if "do" in one]


def _look(outcomes: list[Group], *, hold: bool = False) -> Group:
    looked: Group = {"what": "box", "outcomes": outcomes}
    if hold:
        looked["hold"] = True
    return {"do": [{"inspect": looked}]}


def _found(then: str, **keys: Any) -> Group:
    return {"found": f"It looks like {then}.", "then": then, **keys}


def _methods(place: _Place) -> None:
    found = [one for one in place.steps if set(one) <= {"do", "when"}]
    if not found:
        return
    step = place.luck.choice(found)
    actions = step.pop("do")
    step["either"] = [{"id": f"{place.name}-a", "do": actions}, {"do": [*actions, {"clean": "box"}]}]
    if place.luck.random() < 0.5:
        place.sections[-1]["steps"].append({"if-done": [f"{place.name}-a"], "do": [{"clean": "box"}]})


def _back(place: _Place) -> None:
    again = _found("go-to", to=place.name, **{"at-most": 2, "else": "Ask."})
    looked = _look([_found("go-on"), again], hold=place.luck.random() < 0.3)
    place.put({"id": place.name, "do": [{"clean": "box"}]}, looked)


def _forward(place: _Place) -> None:
    luck = place.luck
    outcomes = [
        _found("go-to", to=place.name),
        _found(luck.choice(["go-on", "go-on", "ask-customer", "put-right", "stop"])),
    ]
    if luck.random() < 0.4:
        outcomes[0]["when"] = some_when(luck, place.machine.features)
    between: Group = {"do": [{"clean": "box"}]}
    if luck.random() < 0.2:
        between = _look([_found("go-on")], hold=True)
    place.put(_look(outcomes), between, {"id": place.name, "do": [{"clean": "box"}]})


def _plain(place: _Place) -> None:
    luck = place.luck
    kinds = luck.sample(["put-right", "next-time", "ask-customer", "stop", "do-after", "do"], 2)
    outcomes = [_found("go-on")]
    for kind in kinds:
        one = _found(kind)
        if kind in {"do", "do-after"}:
            if not place.carried:
                continue
            one["to"] = place.carried[0]
        if luck.random() < 0.3:
            one["when"] = some_when(luck, place.machine.features)
        outcomes.append(one)
    place.put(_look(outcomes, hold=luck.random() < 0.3))


def _noticed(place: _Place) -> None:
    luck = place.luck
    one = _found(luck.choice(["put-right", "stop", "next-time"]))
    if place.carried and luck.random() < 0.4:
        one = _found("do", to=place.carried[0])
    luck.choice([*place.plain(), *place.sections]).setdefault("noticed", []).append(one)


def _optional(place: _Place) -> None:
    luck = place.luck
    thing = luck.choice(["left-bush", "right-bush", "box", "engine"])
    worth: Group = {"id": place.name, "optional": "Worth doing when it is dirty."}
    if thing == "engine":
        place.put({**worth, "do": [{"clean": "engine"}]}, {"unless-done": [place.name], "do": [{"clean": "box"}]})
    elif thing == "box":
        place.put(
            {**worth, "do": [{"clean": "box"}]},
            {"if-done": [place.name], **_look([_found("go-on")], hold=luck.random() < 0.5)},
        )
    else:
        place.put(
            {**worth, "do": [{"remove": thing}]},
            {"if-done": [place.name], "do": [{"fit": {"what": thing, "on": thing.replace("bush", "rod")}}]},
        )


def _again(place: _Place) -> None:
    steps: list[Group] = [{"do": [{"clean": "box"}]}, {"do": [{"set": {"what": "lever", "position": "high"}}]}]
    section: Group = {"title": f"Again {place.name}", "repeat": {"times": 2}, "steps": steps}
    if place.luck.random() < 0.5:
        section["optional"] = "Worth doing in winter."
        steps.append(_look([_found("go-on"), _found("stop")], hold=place.luck.random() < 0.5))
    if place.luck.random() < 0.3:
        section["when"] = some_when(place.luck, place.machine.features)
    place.sections.insert(place.luck.randint(0, len(place.sections)), section)


def _states(place: _Place) -> None:
    luck = place.luck
    asked = luck.choice([{"engine": "stopped"}, {"isolator": "live"}, {"bonnet": "closed"}, {"lever": "high"}])
    luck.choice([*place.sections, *place.plain()]).setdefault("needs", asked)
    if luck.random() < 0.4 and place.plain():
        luck.choice(place.plain()).setdefault("leaves", luck.choice([{"engine": "stopped"}, {"lever": "neutral"}]))


_DECORATIONS: tuple[Callable[[_Place], None], ...] = (
    _methods,
    _back,
    _forward,
    _plain,
    _noticed,
    _optional,
    _again,
    _states,
)
