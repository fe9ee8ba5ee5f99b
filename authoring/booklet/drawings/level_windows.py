"""In which windows of temperature a level counts, on which vehicles, and where a part of the circuit is still shut."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from authoring.booklet.phrases import capital
from authoring.booklet.plan import Volume
from authoring.booklet.shapes import Band, Lane, Windows
from authoring.booklet.step_parts import Drawing
from authoring.booklet.wording import Wording
from authoring.booklet.words import Words
from authoring.diagnostics.words import joined
from authoring.model.fitments import may_hold
from authoring.model.fluid import Circuit, Fluid
from authoring.model.lacking import laid_out
from authoring.model.levels import readings
from authoring.model.runs import one_of_each
from authoring.model.specification import When
from authoring.model.things import Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension, Unit
from authoring.workshop.interval import Interval, interval_of

_WIDTH = 80.0  # mm of paper, which a telephone still shows large enough
_STEPS = (5, 10, 20)
_MOST_TICKS = 5
_MOST_LANES = 6


class _Scale(Struct, frozen=True):
    """A scale of temperature: its unit, its first and its last number, and how far its ticks are apart."""

    unit: Unit
    first: int
    last: int
    step: int

    def at(self, kelvin: Fraction) -> float:
        """Return where a temperature in K lies, in mm from the left."""
        number = (kelvin - self.unit.offset) / self.unit.factor
        share = float((number - self.first) / (self.last - self.first))
        return round(_WIDTH * share, 2)

    def ticks(self) -> tuple[tuple[float, str], ...]:
        """Return the places of the numbers on the scale."""
        numbers = range(self.first, self.last + 1, self.step)
        return tuple((round(_WIDTH * (one - self.first) / (self.last - self.first), 2), str(one)) for one in numbers)


class _Kind(Struct, frozen=True):
    """What one kind of vehicle has: which of the windows, and whether the circuit has its thermostat."""

    windows: tuple[int, ...]
    shut: bool


class _Shut(Struct, frozen=True):
    """The part of a circuit that a thermostat keeps shut: its name, from and to where it opens in K, that in words."""

    name: str
    low: Fraction
    high: Fraction
    words: str


def level_windows(value: Value, volume: Volume, wording: Wording) -> Iterator[Drawing]:
    """Yield the drawing of a temperature with several windows: one lane for each kind of vehicle of the booklet."""
    windows = [one.specification.value for one in value.windows]
    known = [one for one in windows if one is not None and one.dimension is Dimension.TEMPERATURE]
    if len(known) != len(windows):
        return
    fluids = _fluids(value, volume)
    circuit = next((one.circuit for one in fluids if one.circuit is not None), None)
    kinds = _kinds(value, circuit, volume)
    if not 0 < len(kinds) <= _MOST_LANES:
        return
    shut = _shut(circuit, wording) if any(kind.shut for kind in kinds) else None
    scale = _scale(
        [*map(interval_of, known), *([Interval(shut.low, shut.high)] if shut is not None else [])],
        wording.units(known[0])[0],
    )
    shares = (scale.at(shut.low), scale.at(shut.high)) if shut is not None else (0.0, 0.0)
    lanes = tuple(
        Lane(
            _whose(whens, wording) if len(kinds) > 1 else "",
            tuple(_band(known[at], scale, wording) for at in kind.windows),
            *(shares if kind.shut else (0.0, 0.0)),
        )
        for kind, whens in kinds.items()
    )
    meant = "in which the level counts" if fluids else "that will do"
    notes = [f"Scale in {scale.unit.symbol}. A frame is a window {meant}."]
    if shut is not None:
        notes.append(f"Hatched: the {shut.name} is shut or only opening, and what it holds is missing from the level.")
    yield Drawing(
        capital(value.name),
        f"Drawing of the temperatures {'at which the level counts' if fluids else 'that will do'}. {_alt(lanes, shut)}",
        Windows(_WIDTH, lanes, scale.ticks()),
        tuple((Words(note),) for note in notes),
    )


def _whose(whens: Sequence[When], wording: Wording) -> str:
    """Return several conditions of which one holds in words."""
    return joined([wording.said(when) for when in whens], "or")


def _band(window: Quantity, scale: _Scale, wording: Wording) -> Band:
    within = interval_of(window)
    low = scale.at(within.low) if within.low is not None else 0.0
    return Band(low, scale.at(within.high) if within.high is not None else _WIDTH, wording.amount(window).first)


def _fluids(value: Value, volume: Volume) -> list[Fluid]:
    """Return the fluids of which the level goes by a value."""
    return [one.fluid for one in readings(volume.procedure, volume.scope.library) if one.value is value]


def _shut(circuit: Circuit | None, wording: Wording) -> _Shut | None:
    quantity = circuit.opens.value if circuit is not None else None
    if circuit is None or quantity is None:
        return None
    opens = interval_of(quantity)
    ends = [end for end in (opens.low, opens.high) if end is not None]
    return _Shut(circuit.name, min(ends), max(ends), wording.amount(quantity).first)


def _kinds(value: Value, circuit: Circuit | None, volume: Volume) -> dict[_Kind, list[When]]:
    """Return the kinds of vehicle that differ in their windows or their circuit, with the conditions of each."""
    vehicle = volume.scope.vehicle
    whens = [*(window.when for window in value.windows), *([circuit.when] if circuit is not None else [])]
    covers = {**volume.procedure.covers, **{name: (one,) for name, one in volume.selection.items()}}
    found: dict[_Kind, list[When]] = {}
    space = laid_out(vehicle, covers, whens) if vehicle is not None else None
    if space is None:
        return found
    for fitment, alike in one_of_each(whens, space.every, space):
        mine = tuple(at for at, window in enumerate(value.windows) if may_hold(window.when, fitment))
        kind = _Kind(mine, circuit is not None and may_hold(circuit.when, fitment))
        found[kind] = list(space.groups(alike))
    return found


def _scale(spans: Sequence[Interval], unit: Unit) -> _Scale:
    """Return a scale in tens that begins below all and ends above all, with no more numbers than can be read."""
    ends = [end for span in spans for end in (span.low, span.high) if end is not None]
    numbers = [(end - unit.offset) / unit.factor for end in ends]
    span = max(numbers) - min(numbers)
    steps = (one * 10**power for power in itertools.count() for one in _STEPS)
    step = next(one for one in steps if span / one <= _MOST_TICKS)
    return _Scale(unit, (math.ceil(min(numbers) / step) - 1) * step, (math.floor(max(numbers) / step) + 1) * step, step)


def _alt(lanes: Sequence[Lane], shut: _Shut | None) -> str:
    told = []
    for lane in lanes:
        windows = " or ".join(band.words for band in lane.bands) or "in no window"
        still = f"; the {shut.name} opens at {shut.words}" if shut is not None and lane.open else ""
        told.append(f"{f'{lane.words}: ' if lane.words else ''}{windows}{still}.")
    return " ".join(told)
