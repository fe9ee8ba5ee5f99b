"""What must be so, what is left behind, and when a step is done at all."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tests.seeded.demo import Demo
from tests.seeded.edits import put
from tests.seeded.keys import KeyAt, dropping, dropping_entry, keys
from tests.seeded.variant import Kind, Variant

_TURNED = {
    "stopped": "running",
    "running": "stopped",
    "isolated": "live",
    "live": "isolated",
    "supported": "free",
    "chocked": "free",
    "raised": "lowered",
    "lowered": "raised",
    "open": "closed",
    "closed": "open",
    "removed": "fitted",
    "fitted": "removed",
    "without-pressure": "running",
}


def _states(demo: Demo, name: str) -> Iterator[tuple[KeyAt, str]]:
    for key in keys(demo, "procedure"):
        if key.name == name and isinstance(key.value, dict):
            for thing in key.value:
                yield key, thing


def _turned(demo: Demo, name: str) -> Iterator[Variant]:
    for key, thing in _states(demo, name):
        state = key.value[thing]
        other = _TURNED.get(state) or _other_state(demo, key, thing, state)
        if other is not None:
            told = f'"{name}: {{{thing}: {state}}}" becomes "{other}"'
            path = (*key.path, thing)
            yield Variant(key.document.file, path, told, (put(path, other),))


def _other_state(demo: Demo, key: KeyAt, thing: str, state: str) -> str | None:
    """Return another position of an item, or another value in place of the one that is wanted."""
    things = demo.things(key.document)
    positions = [one for one in getattr(things[thing].thing, "positions", {}) if one != state]
    return positions[0] if positions else demo.nearest(key.document, state, set())


def turn_what_is_needed(demo: Demo) -> Iterator[Variant]:
    """A step, a section or the job needs the opposite."""
    yield from _turned(demo, "needs")


def turn_what_is_left(demo: Demo) -> Iterator[Variant]:
    """A step or the job is said to leave the opposite."""
    yield from _turned(demo, "leaves")


def _if_and_unless(demo: Demo) -> Iterator[Variant]:
    for key in keys(demo, "procedure"):
        other = {"if-done": "unless-done", "unless-done": "if-done"}.get(key.name)
        if other is not None:
            owner, path = key.path[:-1], key.path
            step: Any = key.document.data
            for one in owner:
                step = step[one]
            turned = {other if name == key.name else name: value for name, value in step.items()}
            yield Variant(key.document.file, path, f'"{key.name}" becomes "{other}"', (put(owner, turned),))


def set_another_position(demo: Demo) -> Iterator[Variant]:
    """A lever is set to another of its positions; the text says so too where it names the position."""
    for action in demo.actions():
        if action.name != "set":
            continue
        thing = demo.things(action.step.document)[action.what[0]].thing
        positions = getattr(thing, "positions", {})
        was = action.given["position"]
        for other in [one for one in positions if one != was][:1]:
            text = action.step.text.replace(was, other)
            do = [
                {action.name: {**action.given, "position": other}} if place == action.place else one
                for place, one in enumerate(action.step.data["do"])
            ]
            step = {**action.step.data, "do": do, **({"step": text} if action.step.text else {})}
            told = f"{action.what[0]} is set to {other} in place of {was}"
            yield Variant(action.step.document.file, action.path, told, (put(action.step.path, step),))


def change_the_persons(demo: Demo) -> Iterator[Variant]:
    """The job or a step says that one person is enough."""
    for key in keys(demo, "procedure"):
        if key.name == "persons" and key.value > 1:
            told = f'"persons: {key.value}" becomes 1 at {key.owner}'
            yield Variant(key.document.file, key.path, told, (put(key.path, 1),))


def change_the_phase(demo: Demo) -> Iterator[Variant]:
    """A section is put into the phase of its neighbour."""
    for document, path, section in demo.sections():
        phases = ["prepare", "remove", "work", "refit", "test", "close"]
        if "phase" in section:
            other = phases[(phases.index(section["phase"]) + 1) % len(phases)]
            told = f'"phase: {section["phase"]}" becomes "{other}" in "{section["title"]}"'
            yield Variant(document.file, (*path, "phase"), told, (put((*path, "phase"), other),))


def free_the_order(demo: Demo) -> Iterator[Variant]:
    """A section is said to bear any order."""
    for document, path, section in demo.sections():
        if len(section["steps"]) > 1 and "order" not in section:
            told = f'"{section["title"]}" may be done in any order'
            yield Variant(document.file, path, told, (put((*path, "order"), "any"),))


KINDS: dict[str, Kind] = {
    "drop a need": dropping_entry("procedure", "needs"),
    "turn a need": turn_what_is_needed,
    "drop what is left": dropping_entry("procedure", "leaves"),
    "turn what is left": turn_what_is_left,
    "drop if-done": dropping("procedure", "if-done"),
    "drop unless-done": dropping("procedure", "unless-done"),
    "turn if-done and unless-done": _if_and_unless,
    "set another position": set_another_position,
    "drop the persons of a step": dropping("procedure", "persons", below="steps"),
    "change the persons": change_the_persons,
    "drop a hold": dropping("procedure", "hold", below="do"),
    "drop a condition of the job": dropping_entry("procedure", "conditions"),
    "drop what is kept meanwhile": dropping("procedure", "while"),
    "drop a deadline": dropping("procedure", "deadline"),
    "drop optional": dropping("procedure", "optional"),
    "drop a bench": dropping("procedure", "bench"),
    "change the phase": change_the_phase,
    "free the order": free_the_order,
    "drop what is near": dropping("procedure", "near"),
    "drop what is left alone": dropping("procedure", "leave"),
}
