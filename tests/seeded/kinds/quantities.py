"""Numbers and units that were typed wrongly, and values that changed places."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from itertools import pairwise
from typing import Any

from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity
from tests.seeded.demo import Demo
from tests.seeded.edits import Path, both, put
from tests.seeded.keys import KeyAt, keys
from tests.seeded.variant import Kind, Variant

_FILES = ("procedure", "equipment", "stock", "shop")
_WORDS = frozenset(
    {"at", "name", "title", "edition", "thread", "class", "date", "clock", "first", "revision", "number"}
)

_OTHER_UNIT = {
    "N·m": "lbf·ft",
    "°C": "°F",
    "K": "°F",
    "mm": "in",
    "m": "ft",
    "L": "US qt",
    "min": "s",
    "h": "min",
    "bar": "psi",
    "kg": "lb",
    "N": "lbf",
    "MPa": "psi",
    "V": "A",
    "kg/m³": "kg",
    "°": "turn",
    "turn": "°",
    "r/min": "Hz",
}
_UNIT = re.compile(r"(?<=[\d ])(?:" + "|".join(sorted(map(re.escape, _OTHER_UNIT), key=len, reverse=True)) + r")$")
_FIRST_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def _stated(demo: Demo) -> Iterator[tuple[KeyAt, Path, str]]:
    """Yield each quantity that is stated in any file, with its path."""
    for kind in _FILES:
        for key in keys(demo, kind):
            if key.name in _WORDS:
                continue
            if isinstance(key.value, str) and _reads(key.value):
                yield key, key.path, key.value
            for place, one in enumerate(key.value if isinstance(key.value, list) else ()):
                if isinstance(one, str) and _reads(one):
                    yield key, (*key.path, place), one


def _reads(text: str) -> bool:
    return bool(_FIRST_NUMBER.search(text)) and isinstance(read_quantity(text), Quantity)


def change_a_unit(demo: Demo) -> Iterator[Variant]:
    """The number is right, and the unit is that of the other system, or the next smaller one."""
    for key, path, text in _stated(demo):
        match = _UNIT.search(text)
        if match is not None:
            other = f"{text[: match.start()]}{_OTHER_UNIT[match[0]]}"
            yield _typed(key, path, text, other)


def _other_number(change: Callable[[str], str | None]) -> Kind:
    def variants(demo: Demo) -> Iterator[Variant]:
        for key, path, text in _stated(demo):
            match = _FIRST_NUMBER.search(text)
            other = change(match[0]) if match is not None else None
            if match is not None and other is not None and other != match[0]:
                yield _typed(key, path, text, f"{text[: match.start()]}{other}{text[match.end() :]}")

    return variants


def _typed(key: KeyAt, path: Path, text: str, other: str) -> Variant:
    return Variant(key.document.file, path, f'"{text}" becomes "{other}" at {_of(key)}', (put(path, other),))


def _of(key: KeyAt) -> str:
    names = [str(one) for one in key.path[:-1] if isinstance(one, str)]
    return ".".join([*names[-2:], key.name])


def _next(digit: str) -> str:
    return str(int(digit) % 9 + 1)


def _first_digit(number: str) -> str | None:
    place = next((place for place, one in enumerate(number) if one not in "0."), None)
    return None if place is None else f"{number[:place]}{_next(number[place])}{number[place + 1 :]}"


def _last_digit(number: str) -> str | None:
    return f"{number[:-1]}{_next(number[-1])}"


def _exchanged(number: str) -> str | None:
    return f"{number[1]}{number[0]}{number[2:]}" if re.match(r"[1-9][1-9]", number) else None


def _nought_more(number: str) -> str | None:
    return f"{number}0" if "." not in number else None


def _point_lost(number: str) -> str | None:
    return number.replace(".", "").lstrip("0") or None if "." in number else None


def widen_a_tolerance(demo: Demo) -> Iterator[Variant]:
    """The tolerance is ten times as wide."""
    for key, path, text in _stated(demo):
        found = re.search(r"± (\d+(?:\.\d+)?)", text)
        if found is not None:
            wider = f"{float(found[1]) * 10:g}"
            yield _typed(key, path, text, f"{text[: found.start(1)]}{wider}{text[found.end(1) :]}")


def drop_a_tolerance(demo: Demo) -> Iterator[Variant]:
    """The nominal is stated without its tolerance."""
    for key, path, text in _stated(demo):
        bare = re.sub(r" ± \d+(?:\.\d+)?", "", text)
        if bare != text:
            yield _typed(key, path, text, bare)


def narrow_a_tolerance(demo: Demo) -> Iterator[Variant]:
    """The tolerance is a tenth of what it is."""
    for key, path, text in _stated(demo):
        found = re.search(r"± (\d+(?:\.\d+)?)", text)
        if found is not None:
            tighter = f"{float(found[1]) / 10:g}"
            yield _typed(key, path, text, f"{text[: found.start(1)]}{tighter}{text[found.end(1) :]}")


def turn_a_limit(demo: Demo) -> Iterator[Variant]:
    """At least is taken for at most."""
    turned: Mapping[str, str] = {"at least": "at most", "at most": "at least"}
    for key, path, text in _stated(demo):
        limit = next((one for one in turned if text.startswith(one)), None)
        if limit is not None:
            yield _typed(key, path, text, text.replace(limit, turned[limit], 1))


def swap_two_torques(demo: Demo) -> Iterator[Variant]:
    """The torques of two groups that stand one below the other change places, source and all."""
    for document in demo.of_kind("equipment"):
        groups = {name: one["torque"] for name, one in document.data["fasteners"].items() if "torque" in one}
        yield from _swapped_values(document.file, groups, ("fasteners",), "torque")


def swap_two_values(demo: Demo) -> Iterator[Variant]:
    """Two values of one unit that stand next to each other change places."""
    for kind in ("procedure", "equipment"):
        for document in demo.of_kind(kind):
            values = {name: one["value"] for name, one in document.data.get("values", {}).items() if "value" in one}
            units = {text.rpartition(" ")[2] for text in values.values()}
            for unit in sorted(units):
                alike = {name: text for name, text in values.items() if text.rpartition(" ")[2] == unit}
                yield from _swapped_values(document.file, alike, ("values",), "value")


def _swapped_values(file: str, values: Mapping[str, Any], path: Path, key: str) -> Iterator[Variant]:
    names = list(values)
    for one, other in pairwise(names):
        if values[one] != values[other]:
            edit = both(put((*path, one, key), values[other]), put((*path, other, key), values[one]))
            yield Variant(file, (*path, one, key), f'"{key}" of {one} and of {other} change places', (edit,))


KINDS: dict[str, Kind] = {
    "change a unit": change_a_unit,
    "change the first digit": _other_number(_first_digit),
    "change the last digit": _other_number(_last_digit),
    "exchange two digits": _other_number(_exchanged),
    "type a nought too many": _other_number(_nought_more),
    "lose the point": _other_number(_point_lost),
    "widen a tolerance": widen_a_tolerance,
    "narrow a tolerance": narrow_a_tolerance,
    "drop a tolerance": drop_a_tolerance,
    "turn a limit": turn_a_limit,
    "swap two torques": swap_two_torques,
    "swap two values": swap_two_values,
}
