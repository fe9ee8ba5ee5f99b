"""The vehicles of a booklet in groups: those for which something comes out alike stand together."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from typing import TypeVar

from authoring.booklet.plan import Volume
from authoring.booklet.wording import Wording
from authoring.diagnostics.words import joined
from authoring.model.fitments import Fitment
from authoring.model.lacking import laid_out
from authoring.model.runs import one_of_each
from authoring.model.space import Cells
from authoring.model.specification import When

MOST = 64
"""How many kinds of vehicle are told apart; of more no reader would find theirs in a table."""

_Result = TypeVar("_Result", bound=Hashable)


class Vehicles:
    """The vehicles of a booklet, told apart by which of some conditions hold for them."""

    def __init__(self, volume: Volume, whens: Sequence[When]) -> None:
        vehicle = volume.scope.vehicle
        asked = [when for when in whens if when]
        self._space = laid_out(vehicle, booked(volume), asked) if vehicle is not None else None
        self._each: list[tuple[Fitment, Cells]] = []
        if self._space is not None:
            self._each = one_of_each(asked, self._space.every, self._space)
        self.too_many = not 0 < len(self._each) <= MOST
        """Whether nothing can be said of each of them."""

    def grouped(self, result: Callable[[Fitment], _Result]) -> dict[_Result, tuple[When, ...]]:
        """Return each result and the conditions of which one holds for the vehicles that have it; none for all of them.

        Where the vehicles are too many nothing is returned.
        """
        if self.too_many or self._space is None:
            return {}
        found: dict[_Result, Cells] = {}
        for machine, alike in self._each:
            one = result(machine)
            found[one] = found.get(one, 0) | alike
        space = self._space
        return {one: tuple(space.groups(cells)) if cells != space.every else () for one, cells in found.items()}


def booked(volume: Volume) -> When:
    """Return what a booklet covers: what its procedure does, narrowed to the selection."""
    return {**volume.procedure.covers, **{feature: (value,) for feature, value in volume.selection.items()}}


def any_of(whens: Sequence[When], wording: Wording) -> str:
    """Return conditions of which one holds in words; empty for none."""
    return joined([wording.said(when) for when in whens], "or")
