"""Fluids that share one housing: where one goes in, the others are filled again; where one runs out, so do they."""

from __future__ import annotations

from functools import cache

from authoring.model.action_kinds import action_kinds
from authoring.model.fluid import Fluid
from authoring.model.things import Equipment
from authoring.proof.linked import Linked

LEVEL = "level"
"""The side of a fluid that tells whether it stands where it should: drained until its level is set, then filled."""

_SETS_LEVEL = frozenset({"top-up", "fill-to-level"})


@cache
def pouring() -> frozenset[str]:
    """Return the names of the actions that put a fluid in."""
    return frozenset(kind.name for kind in action_kinds().values() if kind.pours)


@cache
def letting_out() -> frozenset[str]:
    """Return the names of the actions that take a fluid out."""
    return frozenset(kind.name for kind in action_kinds().values() if kind.lets_out)


def mates(fluid: Fluid, equipment: Equipment) -> list[Fluid]:
    """Return the other fluids in the same item."""
    others = (one for one in equipment.fluids.values() if one is not fluid)
    return [one for one in others if one.held_in is not None and one.held_in == fluid.held_in]


def filled_with(fluid: Fluid, equipment: Equipment) -> list[Linked]:
    """Return what counts as filling a fluid again though another one is named."""
    return [Linked(pouring(), one.id, (fluid.id, "fluid"), "filled") for one in mates(fluid, equipment)]


def level_of(fluid: Fluid, equipment: Equipment) -> list[Linked]:
    """Return what makes room for a fluid, and what brings it to its level."""
    out = [Linked(letting_out(), one.id, (fluid.id, LEVEL), "drained") for one in (fluid, *mates(fluid, equipment))]
    return [*out, Linked(_SETS_LEVEL, fluid.id, (fluid.id, LEVEL), "filled")]
