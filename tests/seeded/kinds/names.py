"""One name in place of another: in an action, in the text, or in both."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any

from tests.seeded.demo import Demo, StepAt
from tests.seeded.edits import everywhere, put
from tests.seeded.keys import keys
from tests.seeded.variant import Kind, Variant
from tests.seeded.wording import in_plain_words, names_in, renamed

_ROLES = frozenset({"on", "to", "into", "at", "by", "in", "with", "without", "of", "towards", "until", "bore", "shaft"})
_VALUES = frozenset({"value", "amount", "expected", "window", "level", "force", "clearance", "to", "until", "depth"})


def another_thing_in_both(demo: Demo) -> Iterator[Variant]:
    """Another thing of the same kind is named, in every action of the step and in its text."""
    for step, name, other in _touched(demo):
        told = f'"{step.title}" is done to {other} in place of {name}, in text and actions'
        data = _renamed(step.data, name, other)
        yield Variant(step.document.file, (*step.path, "do"), told, (put(step.path, data),))


def another_thing_in_the_action(demo: Demo) -> Iterator[Variant]:
    """An action names another thing than the text."""
    for step, name, other in _touched(demo):
        if step.text:
            told = f'"{step.title}" is done to {other} in the actions only'
            do = everywhere(step.data["do"], partial(_exchanged, name, other))
            edit = put((*step.path, "do"), do)
            yield Variant(step.document.file, (*step.path, "do"), told, (edit,), text_tells=True)


def _exchanged(name: str, other: str, text: str) -> str:
    return other if text == name else text


def another_thing_in_the_text(demo: Demo) -> Iterator[Variant]:
    """The text names another thing than the actions."""
    for step, name, other in _touched(demo):
        if f"[{name}]" in step.text:
            told = f'"{step.title}" names {other} in the text only'
            edit = put((*step.path, "step"), renamed(step.text, name, other))
            yield Variant(step.document.file, (*step.path, "step"), told, (edit,), text_tells=True)


def _touched(demo: Demo) -> Iterator[tuple[StepAt, str, str]]:
    for step in demo.steps():
        things = demo.things(step.document)
        taken = set(_strings(step.data["do"])) & things.keys()
        acted = {name for one in step.data["do"] for given in one.values() for name in _what(given)}
        for name in sorted(acted):
            other = demo.nearest(step.document, name, taken | names_in(step.text))
            if other is not None and things[name].kind.name not in {"PROCEDURE", "OPTION", "MODIFICATION", "VALUE"}:
                yield step, name, other


def another_partner(demo: Demo) -> Iterator[Variant]:
    """What it goes on, into, over or beside is another thing, in text and action."""
    for step, key, name in _in_actions(demo, _ROLES):
        things = demo.things(step.document)
        if name in things and things[name].kind.name != "VALUE":
            other = demo.nearest(step.document, name, set(_strings(step.data["do"])))
            if other is not None:
                told = f'"{key}: {name}" becomes {other} in "{step.title}"'
                data = _renamed(step.data, name, other)
                yield Variant(step.document.file, (*step.path, "do"), told, (put(step.path, data),))


def another_value(demo: Demo) -> Iterator[Variant]:
    """A step works to another value of the same dimension, in text and action."""
    for step, key, name in _in_actions(demo, _VALUES | {"wait"}):
        yield from _with_other_value(demo, step, key, name)


def _with_other_value(demo: Demo, step: StepAt, key: str, name: str) -> Iterator[Variant]:
    things = demo.things(step.document)
    if name not in things or things[name].kind.name != "VALUE":
        return
    unit = _unit(things[name].thing)
    alike = {one for one in things if things[one].kind.name == "VALUE" and _unit(things[one].thing) == unit}
    others = {one for one in things if things[one].kind.name == "VALUE"} - alike
    other = demo.nearest(step.document, name, others)
    if other is not None:
        told = f'"{key}: {name}" becomes {other} in "{step.title}"'
        data = _renamed(step.data, name, other)
        yield Variant(step.document.file, (*step.path, "do"), told, (put(step.path, data),))


def _unit(value: Any) -> str:
    data = value.where.data
    text = str(data["value"] if "value" in data else data["windows"][0]["value"])
    return text.rpartition(" ")[2]


def another_tool(demo: Demo) -> Iterator[Variant]:
    """Another tool or consumable is taken, in the list and in the text."""
    for step in demo.steps():
        for place, name in enumerate(step.data.get("with", ())):
            other = demo.nearest(step.document, name, set(step.data["with"]))
            if other is not None:
                told = f'"{step.title}" takes {other} in place of {name}'
                data = _renamed(step.data, name, other)
                yield Variant(step.document.file, (*step.path, "with", place), told, (put(step.path, data),))


def drop_a_tool(demo: Demo) -> Iterator[Variant]:
    """A tool or consumable is not listed; the text says it in plain words."""
    for step in demo.steps():
        things = demo.things(step.document)
        for place, name in enumerate(step.data.get("with", ())):
            left = [one for one in step.data["with"] if one != name]
            data = {key: value for key, value in step.data.items() if key != "with" or left}
            data |= {"with": left} if left else {}
            for key in ("step", "tip"):
                if key in data:
                    data[key] = in_plain_words(data[key], name, things[name].words)
            told = f'{name} is not listed at "{step.title}"'
            # Where an action names the tool as well, the text has to go on naming it.
            listed = data | {key: step.data[key] for key in ("step", "tip") if key in step.data}
            forms = (put(step.path, data), put(step.path, listed))
            yield Variant(step.document.file, (*step.path, "with", place), told, forms)


def fit_the_old_one(demo: Demo) -> Iterator[Variant]:
    """The old thing goes back in place of the new one, in text and action."""
    for action in demo.actions():
        if action.name != "fit" or not isinstance(action.given, dict) or "replaces" not in action.given:
            continue
        old, (new,) = action.given["replaces"], action.what
        given = {key: value for key, value in action.given.items() if key != "replaces"}
        do = [{action.name: given} if at == action.place else one for at, one in enumerate(action.step.data["do"])]
        data = _renamed({**action.step.data, "do": do}, new, old)
        told = f'{old} goes back in place of {new} in "{action.step.title}"'
        yield Variant(action.step.document.file, action.path, told, (put(action.step.path, data),))


def show_another_figure(demo: Demo) -> Iterator[Variant]:
    """A step shows another figure of its procedure."""
    for step in demo.steps():
        for place, name in enumerate(step.data.get("figures", ())):
            other = demo.nearest(step.document, name, set(step.data["figures"]))
            if other is not None:
                path = (*step.path, "figures", place)
                told = f'"{step.title}" shows {other} in place of {name}'
                yield Variant(step.document.file, path, told, (put(path, other),))


def drop_a_figure(demo: Demo) -> Iterator[Variant]:
    """A step does not show its figure."""
    for key in keys(demo, "procedure"):
        if key.name == "figures" and isinstance(key.value, list):
            yield key.variant(f'"figures: {key.value}" is left out')


def swap_two_callouts(demo: Demo) -> Iterator[Variant]:
    """Two numbers of a figure point at each other's things."""
    for key in keys(demo, "procedure"):
        if key.name == "callouts":
            for place in range(len(key.value) - 1):
                one, other = key.value[place], key.value[place + 1]
                if one["on"] != other["on"]:
                    swapped = [{**one, "on": other["on"]}, {**other, "on": one["on"]}]
                    new = [*key.value[:place], *swapped, *key.value[place + 2 :]]
                    told = f"the callouts of {one['on']} and {other['on']} change places"
                    yield Variant(key.document.file, (*key.path, place), told, (put(key.path, new),))


def _in_actions(demo: Demo, names: frozenset[str]) -> Iterator[tuple[StepAt, str, str]]:
    seen: set[tuple[str, object, str, str]] = set()
    for step in demo.steps():
        for key, value in _pairs(step.data["do"]):
            entry = (step.document.file, step.path, key, str(value))
            if key in names and isinstance(value, str) and entry not in seen:
                seen.add(entry)
                yield step, key, value


def _pairs(data: Any) -> Iterator[tuple[str, Any]]:
    if isinstance(data, list):
        for one in data:
            yield from _pairs(one)
    elif isinstance(data, dict):
        for key, value in data.items():
            yield key, value
            yield from _pairs(value)


def _strings(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    for one in data.values() if isinstance(data, dict) else data if isinstance(data, list) else ():
        yield from _strings(one)


def _what(given: Any) -> list[str]:
    what = given["what"] if isinstance(given, dict) else given
    return [what] if isinstance(what, str) else list(what)


def _renamed(step: dict[str, Any], old: str, new: str) -> dict[str, Any]:
    def other(text: str) -> str:
        return new if text == old else renamed(text, old, new)

    return {key: everywhere(value, other) if key in _SAYS else value for key, value in step.items()}


_SAYS = frozenset({"step", "do", "with", "tip", "why", "noticed"})

KINDS: dict[str, Kind] = {
    "another thing in text and action": another_thing_in_both,
    "another thing in the action": another_thing_in_the_action,
    "another thing in the text": another_thing_in_the_text,
    "another partner": another_partner,
    "another value": another_value,
    "another tool": another_tool,
    "drop a tool": drop_a_tool,
    "fit the old one": fit_the_old_one,
    "show another figure": show_another_figure,
    "drop a figure": drop_a_figure,
    "swap two callouts": swap_two_callouts,
}
