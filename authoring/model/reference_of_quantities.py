"""The part of the guide's reference that tells how a quantity is written; whatever it says is read or refused here."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.quantities.misleading import UNPLACED
from authoring.quantities.quantity import Form, Quantity, Refusal
from authoring.quantities.read import read_quantity
from authoring.quantities.show import limits, spell
from authoring.quantities.sound import MAY_BE_ABOUT, NEVER_NEGATIVE
from authoring.quantities.spellings import ABBREVIATIONS, ANGLE_SIGNS, IMP, LOOKALIKES, TORQUE_JOINTS, US
from authoring.quantities.units import SPELLINGS, UNITS, Dimension, Unit

_FORMS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("a value", "42 N·m", ("42Nm", "42.0 N m")),
    ("a tolerance", "42 ± 4 N·m", ("42 +/- 4 N·m", "42 N·m ± 4 N·m", "(42 ± 4) N·m")),
    ("a tolerance with two sides", "42 +4/-2 N·m", ("42 -2/+4 N·m", "(42 +4/-2) N·m")),
    ("a tolerance in percent", "42 N·m ± 10 %", ("42 N·m +10/-5 %",)),
    ("a range", "40 to 44 mm", ("40–44 mm", "40..44 mm", "40 … 44 mm", "40 mm to 44 mm")),
    ("a lower limit", "at least 3 mm", ("min. 3 mm", "minimum 3 mm", ">= 3 mm", "≥ 3 mm")),
    ("an upper limit", "at most 50 °C", ("max. 50 °C", "maximum 50 °C", "<= 50 °C", "≤ 50 °C")),
    ("a rough value", "about 3 L", ("approx. 3 L", "approximately 3 L", "ca. 3 L", "~3 L", "≈ 3 L")),
    ("a share", "50 %", ("40 to 50 %", "(50 ± 5) %")),
)
_REFUSED: tuple[tuple[str, Dimension | None], ...] = (
    *(
        (text, None)
        for text in ("1,5 mm", "1,000 mm", "1 000 mm", "1.000,5 mm", "1/4 in", "1 1/4 in", "1e3 mm", ".5 mm")
    ),
    *((text, None) for text in ("42", "42 N·m ± 4", "44 to 40 N·m", "42 ± 0 N·m", "42 N·m +4", "50 % ± 5 %")),
    *(
        (text, None)
        for text in ("40-44 N·m", "–5 °C", "> 3 mm", "3 mm or more", "50 °C max", "around 3 L", "about 42 N·m")
    ),
    *(
        (text, None)
        for text in ("1 h 30 min", "1:30 h", "5 ft 3 in", "42 N·m (31 lbf·ft)", "42 N·m + 90°", "42 N·m N·m")
    ),
    *(
        (text, None)
        for text in ("42 mN", "42 nm", "42 m·N", "42 mNm", "42 J", "42 kgm", "30 lb/ft", "42 mPa", "30 lb/in²")
    ),
    *(
        (text, None)
        for text in ("2 gal", "3 quarts", "3 pints", "8 fl oz", "2 cups", "5 gpm", "8 US oz", "5 tons", "5 gr")
    ),
    *(
        (text, None)
        for text in ("20 C", "20 F", "20 °K", "90 deg", "30'", "5 k", "5 M", "30 psig", "3 bar(g)", "12 V DC")
    ),
    *((text, None) for text in ("42 KG", "42 kpa", "42 mm.", "800 rpm/min", "5 kW", "-300 °C")),
    ("42 lb", Dimension.TORQUE),
    ("42 kg", Dimension.FORCE),
    ("20 °C", Dimension.ANGLE),
    ("5 m", Dimension.TIME),
    ("8 oz", Dimension.VOLUME),
    ("-4 N·m", Dimension.TORQUE),
    ("4.5", Dimension.COUNT),
)


def quantities() -> list[str]:
    """Return the lines; raises TypeError where a text is no longer read, or no longer refused, as the guide says."""
    return ["", "### Quantities", "", *_forms(), "", *_units(), "", *_refusals()]


def _forms() -> Iterator[str]:
    yield "A number is written with a point, without a power of ten, in digits; thin spaces may part its thousands."
    yield "Blanks of any kind may stand between a number, its unit and the signs, or be left out."
    yield ""
    yield "| what | write | also read | stands for |"
    yield "| --- | --- | --- | --- |"
    for what, text, others in _FORMS:
        for other in others:
            _read(other)
        yield f"| {what} | `{text}` | {_listed(others)} | {_numbers(_read(text))} |"
    yield ""
    yield f"About may be {_named(MAY_BE_ABOUT)}; to the rest somebody is held."
    yield f"Below zero is never {_named(NEVER_NEGATIVE)}."
    yield "A count is written without a unit, and so may a ratio be, such as `0.12 to 0.16`."
    yield "Stages of tightening are a list of quantities, such as `[20 N·m, 45 N·m, 90°]`."
    yield "What is shown keeps the digits typed; in another unit a limit is rounded inward and a window never widens."


def _numbers(quantity: Quantity) -> str:
    shown = limits(quantity, quantity.unit)
    unit = shown.unit
    if quantity.form in (Form.VALUE, Form.ABOUT):
        return spell(quantity)
    ends = (shown.low and f"from {shown.low} {unit}", shown.high and f"up to {shown.high} {unit}")
    return " ".join(filter(None, ends))


def _units() -> Iterator[str]:
    yield "Capitals count: `mN` is no `MN`. The first spelling is the one that is printed."
    yield "A spelling of a volume that differs between nations has the nation before it:"
    yield f"{_listed(US)} for the one, {_listed(IMP)} for the other."
    yield f"Force and length of a torque are joined by {_listed([joint for joint in TORQUE_JOINTS if joint.strip()])},"
    yield "a blank or nothing; in feet and inches either may come first."
    yield f"A full stop may stand behind {_listed(sorted(ABBREVIATIONS))}."
    yield f"Signs that look alike are one: {', '.join(f'`{sign}` is `{right}`' for sign, right in _LOOKALIKE)}."
    signs = ", ".join(f"`{sign}`" for sign in ANGLE_SIGNS)
    yield f"Where the place takes an angle, {signs} are minutes and seconds of arc, and `deg` is read."
    yield "Degrees are a temperature, or a difference of temperature where `of` says so: the two are never mixed."
    yield ""
    yield "| of | units, each with its spellings |"
    yield "| --- | --- |"
    for dimension in Dimension:
        units = [unit for unit in UNITS.values() if unit.dimension is _listed_as(dimension)]
        yield f"| {dimension.value} | {'; '.join(map(_spelled, units))} |"


_LOOKALIKE = [(sign, right) for sign, right in LOOKALIKES.items() if sign.isprintable() and sign not in "‐‑"]


def _listed_as(dimension: Dimension) -> Dimension:
    return Dimension.TEMPERATURE if dimension is Dimension.TEMPERATURE_DIFFERENCE else dimension


def _spelled(unit: Unit) -> str:
    """Return a unit and its spellings, without those that differ by the joint of a torque or the nation of a volume."""
    spellings = [one for one, named in SPELLINGS.items() if named is unit and one != unit.symbol]
    if unit.dimension is Dimension.TORQUE:
        spellings = [one for one in spellings if _joint_is_told(one)]
    if unit.symbol.startswith(("US ", "imp ")):
        nation = unit.symbol.partition(" ")[0] + " "
        spellings = [one for one in spellings if one.startswith(nation)]
    symbol = f"`{unit.symbol}`" if unit.symbol else "no unit"
    return f"{symbol} ({_listed(spellings)})" if spellings else symbol


def _joint_is_told(spelling: str) -> bool:
    """Tell whether a spelling of a torque is shown: of those that differ by the joint alone, the one with the dot."""
    if "·" in spelling:
        return True
    return not any(
        spelling == dotted.replace("·", joint) for dotted in SPELLINGS if "·" in dotted for joint in TORQUE_JOINTS
    )


def _refusals() -> Iterator[str]:
    yield "What is refused, with what the check says of it:"
    yield ""
    yield "| not read | why | cure |"
    yield "| --- | --- | --- |"
    for text, dimension in _REFUSED:
        told = read_quantity(text, dimension)
        if not isinstance(told, Refusal):
            message = f"{text} is read after all"
            raise TypeError(message)
        place = f" as {dimension.value}" if dimension else ""
        yield f"| `{text}`{place} | {told.reason} | {told.cure} |"
    yield ""
    kinds = ", ".join(sorted(set(UNPLACED.values())))
    yield f"Not read either, since no value of a procedure states any, are units of {kinds}."


def _read(text: str) -> Quantity:
    told = read_quantity(text)
    if not isinstance(told, Quantity):
        message = f"{text} is not read any more: {told.reason}"
        raise TypeError(message)
    return told


def _listed(words: Sequence[str]) -> str:
    return ", ".join(f"`{word}`" for word in words)


def _named(dimensions: frozenset[Dimension]) -> str:
    *first, last = [dimension.value for dimension in Dimension if dimension in dimensions]
    return f"a {', '.join(first)} or {last}"
