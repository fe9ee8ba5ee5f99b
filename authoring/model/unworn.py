"""What the shop's policy wants to be worn or used at a step that does not list it."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.model.demanding import Demand, demands
from authoring.model.lacking import Lack, without
from authoring.model.library import Library
from authoring.model.procedure import Procedure


class Unworn(Struct, frozen=True, eq=False):
    """A demand of the shop, the tools and consumables that its step does not list, and the machines concerned."""

    demand: Demand
    names: tuple[str, ...]
    lack: Lack


def unworn(procedure: Procedure, library: Library) -> Iterator[Unworn]:
    """Yield each demand of the shop of which the step does not list what is to be worn, in the order of the steps."""
    vehicle = library.scope(procedure).vehicle
    for demand in demands(procedure, library):
        names = tuple(name for name in demand.policy.wear if name not in demand.step.uses)
        if names and vehicle is not None and demand.policy.where is not None:
            lack = without(vehicle, procedure.covers, demand.asked, demand.settled)
            if lack is not None:
                yield Unworn(demand, names, lack)
