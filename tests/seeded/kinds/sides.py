"""Left taken for right, and other sides and directions taken for their opposites."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from authoring.source.document import Document
from tests.seeded.demo import Demo
from tests.seeded.edits import Path, changed, everywhere, put
from tests.seeded.keys import keys
from tests.seeded.variant import Kind, Variant
from tests.seeded.wording import renamed

_PAIRS = (
    ("left", "right"),
    ("front", "rear"),
    ("inside", "outside"),
    ("inwards", "outwards"),
    ("top", "bottom"),
    ("above", "below"),
    ("upper", "lower"),
    ("forward", "back"),
    ("up", "down"),
)
_OPPOSITE = {**dict(_PAIRS), **{other: one for one, other in _PAIRS}}
_WORD = re.compile(rf"(?<![\w\[-])(?:{'|'.join(_OPPOSITE)})(?![\w\]-])", re.IGNORECASE)
_SAID = frozenset({"step", "tip", "how", "say", "found", "seen-from", "first", "mark", "at", "place", "viewpoint"})


def say_the_other_side(demo: Demo) -> Iterator[Variant]:
    """A text says left for right, or another side for its opposite."""
    for document, path, text in _texts(demo):
        for match in _WORD.finditer(text):
            other = _OPPOSITE[match[0].lower()]
            other = other.capitalize() if match[0][0].isupper() else other
            told = f'"{match[0]}" becomes "{other}" in "{text[max(0, match.start() - 25) : match.end() + 25]}"'
            turned = f"{text[: match.start()]}{other}{text[match.end() :]}"
            yield Variant(document.file, path, told, (put(path, turned),))


def _texts(demo: Demo) -> Iterator[tuple[Document, Path, str]]:
    for kind in ("procedure", "equipment"):
        for key in keys(demo, kind):
            if key.name in _SAID and isinstance(key.value, str):
                yield key.document, key.path, key.value


def take_the_twin(demo: Demo) -> Iterator[Variant]:
    """A step is done to the twin on the other side, in text and actions."""
    for step in demo.steps():
        twins = {name: getattr(named.thing, "twin", None) for name, named in demo.things(step.document).items()}
        for name in sorted(twins):
            other = twins[name]
            if other is not None and _names(step.data["do"], name):
                told = f'"{step.title}" takes {other} for {name}'
                edit = put(step.path, _swapped(step.data, name, other))
                yield Variant(step.document.file, step.path, told, (edit,))


def _names(data: Any, name: str) -> bool:
    found: list[str] = []

    def seen(text: str) -> str:
        found.append(text)
        return text

    everywhere(data, seen)
    return name in found


def _swapped(step: dict[str, Any], name: str, other: str) -> dict[str, Any]:
    """Return the step with the two exchanged where both are named, and with the one for the other where only one is."""

    def exchanged(text: str) -> str:
        text = {name: other, other: name}.get(text, text)
        return renamed(renamed(renamed(text, name, "-"), other, name), "-", other)

    return {key: everywhere(value, exchanged) if key in {"step", "do", "tip"} else value for key, value in step.items()}


def state_the_other_side(demo: Demo) -> Iterator[Variant]:
    """The side of a thing or of a mark is stated as its opposite."""
    for kind in ("procedure", "equipment"):
        for key in keys(demo, kind):
            if key.name == "side":
                other = _OPPOSITE[key.value]
                told = f'"side: {key.value}" becomes "{other}" at {key.path[-2]}'
                yield Variant(key.document.file, key.path, told, (put(key.path, other),))


def turn_the_clock(demo: Demo) -> Iterator[Variant]:
    """A mark stands on the opposite side of the clock."""
    for kind in ("procedure", "equipment"):
        for key in keys(demo, kind):
            if key.name in {"clock", "first"} and re.fullmatch(r"\d+(:\d\d)?", str(key.value)):
                hour, _, rest = str(key.value).partition(":")
                turned = f"{(int(hour) + 5) % 12 + 1}{f':{rest}' if rest else ''}"
                told = f'"{key.name}: {key.value}" becomes "{turned}"'
                yield Variant(key.document.file, key.path, told, (put(key.path, turned),))


def number_bolts_the_other_way(demo: Demo) -> Iterator[Variant]:
    """An order of tightening has two of its numbers exchanged."""
    for key in keys(demo, "equipment"):
        if key.name == "order" and isinstance(key.value, list):

            def exchanged(numbers: list[int]) -> list[int]:
                return [numbers[0], numbers[2], numbers[1], *numbers[3:]]

            told = f'"order: {key.value}" becomes {exchanged(key.value)}'

            def edit(data: Any, path: Path = key.path) -> Any:
                return changed(data, path, exchanged)

            yield Variant(key.document.file, key.path, told, (edit,))


KINDS: dict[str, Kind] = {
    "say the other side": say_the_other_side,
    "take the twin": take_the_twin,
    "state the other side": state_the_other_side,
    "turn the clock": turn_the_clock,
    "number bolts the other way": number_bolts_the_other_way,
}
