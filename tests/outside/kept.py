"""Published values kept as data beside the tests, and the units that their files state them in."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml

from authoring.quantities.convert import convert
from authoring.quantities.units import UNITS
from authoring.workshop.interval import Interval

STATUSES = frozenset({"read", "restated", "memory", "computed", "common practice"})


def kept(name: str) -> dict[str, list[dict[str, Any]]]:
    """Return the rows of a file of published values, by section."""
    text = (Path(__file__).parent / name).read_text(encoding="utf-8")
    rows: dict[str, list[dict[str, Any]]] = yaml.safe_load(text)
    return rows


def without_a_source(sections: dict[str, list[dict[str, Any]]]) -> list[dict[str, Any]]:
    """Return the rows that do not say where they are from and how that was read."""
    rows = [row for section in sections.values() for row in section]
    return [row for row in rows if not row.get("source") or row.get("status") not in STATUSES]


def base(number: str, unit: str) -> Fraction:
    """Return a number of a unit in the base unit of its dimension, exactly."""
    return Fraction(number) * UNITS[unit].factor + UNITS[unit].offset


def between(ends: list[str], unit: str) -> Interval:
    """Return an interval of a unit in base units."""
    low, high = ends
    return Interval(base(low, unit), base(high, unit))


def kelvin(celsius: str) -> Fraction:
    """Return degrees Celsius in kelvin."""
    return convert(Fraction(celsius), UNITS["°C"], UNITS["K"])
