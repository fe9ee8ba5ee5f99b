"""Safety messages that are forgotten, belittled, or called in place of another one."""

from __future__ import annotations

from collections.abc import Iterator

from tests.seeded.criteria import same_messages
from tests.seeded.demo import Demo
from tests.seeded.edits import cut, put
from tests.seeded.keys import KeyAt, dropping, dropping_entry, keys
from tests.seeded.variant import Kind, Variant
from tests.seeded.wording import in_plain_words, names_in

_MILDER = {
    "severity": {"death": "serious", "serious": "moderate", "moderate": "minor"},
    "likelihood": {"will": "could"},
    "harm": {"person": "equipment"},
}


def _called(demo: Demo, *lengths: int) -> Iterator[tuple[KeyAt, int]]:
    """Yield each call of a safety message by a step or a section, which differ by how deep they stand."""
    for key in keys(demo, "procedure"):
        if key.name == "safety" and isinstance(key.value, list) and len(key.path) in lengths:
            for place in range(len(key.value)):
                yield key, place


def _dropped(demo: Demo, *lengths: int) -> Iterator[Variant]:
    for key, place in _called(demo, *lengths):
        path = (*key.path, place)
        told = f'"{key.value[place]}" is not called here'
        yield Variant(key.document.file, path, told, (cut(path),), criterion=same_messages(key.document.file))


def drop_a_message_of_a_step(demo: Demo) -> Iterator[Variant]:
    """A step does not call its message."""
    yield from _dropped(demo, 5, 7)


def drop_a_message_of_a_section(demo: Demo) -> Iterator[Variant]:
    """A section does not call its message."""
    yield from _dropped(demo, 3)


def drop_a_message_of_the_job(demo: Demo) -> Iterator[Variant]:
    """The job does not call a message that holds throughout."""
    for document in demo.of_kind("procedure"):
        hazards = document.data["hazards"]
        for place, name in enumerate(hazards if isinstance(hazards, list) else ()):
            left = [one for one in hazards if one != name]
            edit = put(("hazards",), left or "none")
            yield Variant(document.file, ("hazards", place), f'"{name}" is not called for the whole job', (edit,))


def weaken_a_message(demo: Demo) -> Iterator[Variant]:
    """A message says less harm, or less likely, than is so."""
    for kind in ("procedure", "shop"):
        for key in keys(demo, kind):
            milder = _MILDER.get(key.name, {}).get(str(key.value))
            if milder and key.path[0] == "safety":
                told = f'{key.owner}: "{key.name}: {key.value}" becomes "{milder}"'
                yield Variant(key.document.file, key.path, told, (put(key.path, milder),))


def call_another_message(demo: Demo) -> Iterator[Variant]:
    """A step, a section or the job calls the next message of the list."""
    for key in keys(demo, "procedure"):
        if key.name not in {"safety", "hazards"} or not isinstance(key.value, list):
            continue
        known = demo.messages(key.document)
        for place, name in enumerate(key.value):
            others = [one for one in known[known.index(name) + 1 :] + known if one not in key.value]
            if others:
                path = (*key.path, place)
                told = f'"{others[0]}" is called in place of "{name}"'
                yield Variant(key.document.file, path, told, (put(path, others[0]),))


def forget_what_to_wear(demo: Demo) -> Iterator[Variant]:
    """A message no longer says what is worn or held ready; it says the rest."""
    for kind in ("procedure", "shop"):
        for key in keys(demo, kind):
            if key.name == "avoidance" and names_in(key.value):
                for name in sorted(names_in(key.value)):
                    text = in_plain_words(key.value, name, "right thing")
                    told = f"{key.owner}: the avoidance does not name {name}"
                    yield Variant(key.document.file, key.path, told, (put(key.path, text),))


KINDS: dict[str, Kind] = {
    "drop a message of a step": drop_a_message_of_a_step,
    "drop a message of a section": drop_a_message_of_a_section,
    "drop a message of the job": drop_a_message_of_the_job,
    "weaken a message": weaken_a_message,
    "call another message": call_another_message,
    "forget what to wear": forget_what_to_wear,
    "drop a demand of the shop's policy": dropping_entry("shop", "policy"),
    "drop what the policy wants worn": dropping("shop", "wear", below="policy"),
}
