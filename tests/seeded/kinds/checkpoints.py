"""Checkpoints whose outcomes are forgotten, lead elsewhere, or lead round for ever."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tests.seeded.demo import Demo, StepAt
from tests.seeded.edits import at, both, put
from tests.seeded.keys import dropping, dropping_entry, keys
from tests.seeded.variant import Kind, Variant


def swap_what_follows(demo: Demo) -> Iterator[Variant]:
    """What was found good and what was found bad change places."""
    for key in keys(demo, "procedure"):
        if key.name != "outcomes":
            continue
        for place in range(len(key.value) - 1):
            one, other = key.value[place], key.value[place + 1]
            if one["then"] == "go-on" and other["then"] != "go-on":
                swapped = [{**one, "found": other["found"]}, {**other, "found": one["found"]}]
                new = [*key.value[:place], *swapped, *key.value[place + 2 :]]
                told = f'"{one["found"]}" and "{other["found"]}" change places'
                yield Variant(key.document.file, (*key.path, place), told, (put(key.path, new),))


def go_on_after_a_bad_finding(demo: Demo) -> Iterator[Variant]:
    """What was found bad lets the reader go on."""
    for key in keys(demo, "procedure"):
        if key.name in {"outcomes", "noticed"}:
            for place, outcome in enumerate(key.value):
                if outcome["then"] in {"stop", "put-right"}:
                    kept = {name: value for name, value in outcome.items() if name in {"found", "say", "when", "like"}}
                    path = (*key.path, place)
                    told = f'after "{outcome["found"]}" follows go-on in place of {outcome["then"]}'
                    yield Variant(key.document.file, path, told, (put(path, {**kept, "then": "go-on"}),))


def go_to_another_step(demo: Demo) -> Iterator[Variant]:
    """A go-to leads to the step before its target, or the one after it."""
    steps = list(demo.steps())
    for key in keys(demo, "procedure"):
        if key.name != "then" or key.value != "go-to":
            continue
        outcome = at(key.document.data, key.path[:-1])
        mine = [one for one in steps if one.document is key.document and not one.is_method]
        target = next((place for place, one in enumerate(mine) if one.data.get("id") == outcome["to"]), None)
        for place in (target - 1, target + 1) if target is not None else ():
            if 0 <= place < len(mine):
                yield _led_to(mine[place], outcome, (*key.path[:-1], "to"))


def _led_to(step: StepAt, outcome: dict[str, Any], path: tuple[str | int, ...]) -> Variant:
    name = step.data.get("id", "elsewhere")
    edit = put(path, name)
    if "id" not in step.data:
        edit = both(edit, put((*step.path, "id"), name))
    told = f'"{outcome["found"]}" leads to "{step.title}" in place of {outcome["to"]}'
    return Variant(step.document.file, path, told, (edit,))


def do_another_procedure(demo: Demo) -> Iterator[Variant]:
    """Another procedure of the same machine is carried out, in the data and in the text."""
    for document in demo.of_kind("procedure"):
        others = [
            one.data["procedure"]
            for one in demo.of_kind("procedure")
            if one.data["equipment"] == document.data["equipment"] and one is not document
        ]
        for key in keys(demo, "procedure"):
            if key.document is document and key.name in {"carry-out", "to", "by"} and key.value in others:
                other = others[(others.index(key.value) + 1) % len(others)]
                edit = put(key.path, other)
                if key.name == "carry-out":
                    step = key.path[:-3]
                    edit = both(edit, put((*step, "step"), _step(document.data, step).replace(key.value, other)))
                told = f"{other} is done in place of {key.value}"
                yield Variant(document.file, key.path, told, (edit,))


def _step(data: Any, path: tuple[str | int, ...]) -> str:
    return str(at(data, path)["step"])


def look_another_way(demo: Demo) -> Iterator[Variant]:
    """A checkpoint forgets that it is felt or heard."""
    yield from dropping("procedure", "way", below="do")(demo)


def another_number_on_the_picture(demo: Demo) -> Iterator[Variant]:
    """A finding is likened to another number on the picture."""
    for key in keys(demo, "procedure"):
        if key.name == "like":
            other = key.value % 3 + 1
            told = f'"like: {key.value}" becomes {other}'
            yield Variant(key.document.file, key.path, told, (put(key.path, other),))


KINDS: dict[str, Kind] = {
    "drop an outcome": dropping_entry("procedure", "outcomes"),
    "drop what may be noticed": dropping_entry("procedure", "noticed"),
    "swap what follows": swap_what_follows,
    "go on after a bad finding": go_on_after_a_bad_finding,
    "drop what is said of a finding": dropping("procedure", "say"),
    "drop what a finding bears on": dropping("procedure", "bears-on"),
    "go to another step": go_to_another_step,
    "do another procedure": do_another_procedure,
    "drop the most turns": dropping("procedure", "at-most"),
    "drop what follows in vain": dropping("procedure", "else"),
    "drop a repeat": dropping("procedure", "repeat"),
    "drop the number of repeats": dropping("procedure", "times"),
    "look another way": look_another_way,
    "another number on the picture": another_number_on_the_picture,
}
