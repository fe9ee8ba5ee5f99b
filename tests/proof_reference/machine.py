"""A small machine at random: in what the vehicles differ, what covers what, what is part of what."""

from __future__ import annotations

import random
from dataclasses import dataclass
from typing import Any

Group = dict[str, Any]
When = dict[str, list[str]]

_FEATURES = {
    "brake": ["drum", "disc"],
    "axle": ["wide", "slim"],
    "cab": ["tall", "low", "bare"],
    "gearbox": ["fast", "slow"],
}


@dataclass(frozen=True)
class Machine:
    """The things of an equipment file by name, each with its keys, and the features of its vehicles."""

    features: dict[str, list[str]]
    never: list[dict[str, str]]
    items: dict[str, Group]
    fasteners: dict[str, Group]
    fluids: dict[str, Group]

    def when(self, thing: str) -> When:
        """Return for which vehicles a thing is there."""
        one = self.items.get(thing) or self.fasteners.get(thing) or self.fluids.get(thing) or {}
        found: When = one.get("when", {})
        return found

    def covers_of(self, thing: str) -> list[str]:
        """Return the items that cover a thing, or something that it is part of."""
        wholes = [thing]
        while "part-of" in self.items.get(wholes[-1], {}):
            wholes.append(self.items[wholes[-1]]["part-of"])
        return [name for name, one in self.items.items() if set(wholes) & set(one.get("covers", []))]


def machine(luck: random.Random) -> Machine:
    """Return a machine: the things that every story knows, tied to one another by chance."""
    chosen = luck.sample(list(_FEATURES), luck.choice([2, 2, 2, 3, 3, 4]))
    features = {name: _FEATURES[name] for name in _FEATURES if name in chosen}
    never = []
    if luck.random() < 0.6:
        pair = luck.sample(chosen, 2)
        never = [{name: luck.choice(features[name]) for name in pair}]
    items = _items(luck, features)
    return Machine(features, never, items, _fasteners(luck, items), _fluids())


def some_when(luck: random.Random, features: dict[str, list[str]]) -> When:
    """Return a condition on one feature that some machines meet and some do not."""
    name = luck.choice(list(features))
    values = features[name]
    kept = luck.sample(values, luck.randint(1, len(values) - 1))
    return {name: [value for value in values if value in kept]}


def _items(luck: random.Random, features: dict[str, list[str]]) -> dict[str, Group]:
    inside = ["plate", "filter", "pump", "lamp", "cap", "gear"]
    items: dict[str, Group] = {
        "box": {},
        "engine": {},
        "isolator": {},
        "skip": {},
        "lever": {"positions": {"high": "high range", "neutral": "neutral"}},
        "bonnet": {"covers": luck.sample(inside, luck.randint(1, 3))},
        "plate": {"covers": luck.sample(["filter", "gear", "cap", "rotor"], luck.randint(1, 2))},
        "pump": {"part-of": "box"} if luck.random() < 0.3 else {},
        "rotor": {"part-of": "pump"},
        "filter": {},
        "gear": {},
        "cap": {},
        "lamp": {},
        "left-rod": {"side": "left", "twin": "right-rod"},
        "right-rod": {"side": "right", "twin": "left-rod"},
        "left-bush": {"side": "left", "twin": "right-bush"},
        "right-bush": {"side": "right", "twin": "left-bush"},
    }
    if luck.random() < 0.3:
        items["flap"] = {"covers": luck.sample(["left-rod", "right-rod", "skip", "lamp", "engine"], 2)}
    for name in ("gear", "filter", "lamp", "plate", "cap"):
        if luck.random() < 0.25:
            items[name]["when"] = some_when(luck, features)
    return items


def _fasteners(luck: random.Random, items: dict[str, Group]) -> dict[str, Group]:
    bolt = {"count": 2, "thread": "M8", "tightened": "By hand."}
    fasteners: dict[str, Group] = {
        "plate-bolts": {**bolt, "on": "plate"},
        "pump-bolts": {**bolt, "on": "pump"},
        "pump-nuts": {**bolt, "on": "pump"},
        "cap-bolts": {**bolt, "on": "cap"},
        "drain-plug": {**bolt, "on": "box", "drains": ["oil"]},
        "level-plug": {**bolt, "on": "box", "fills": ["oil"]},
    }
    if luck.random() < 0.5:
        fasteners["plate-screws"] = {**bolt, "on": "plate"}
    if luck.random() < 0.5:
        fasteners["stop-screws"] = {**bolt, "on": luck.choice(["plate", "pump"]), "untouched": "It sets the play."}
    if luck.random() < 0.4:
        fasteners["cap-plug"] = {**bolt, "on": "cap", "drains": ["coolant"]}
    if luck.random() < 0.5:
        fasteners["level-plug"]["open-while-running"] = "The level counts only while the oil goes round."
    for one in fasteners.values():
        if "when" in items[one["on"]]:
            one["when"] = items[one["on"]]["when"]
    return fasteners


def _fluids() -> dict[str, Group]:
    return {
        "oil": {"kind": "gear oil of our grade 2", "disposal": "used-oil tank"},
        "coolant": {"kind": "water with antifreeze", "disposal": "coolant drum"},
    }
