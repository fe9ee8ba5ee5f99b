"""Which tools of a step are wrenches that show a torque, and how each suits a fastener group."""

from __future__ import annotations

from authoring.model.library import Scope
from authoring.model.procedure import Step
from authoring.model.things import FastenerGroup, Tool
from authoring.quantities.units import Dimension
from authoring.workshop.interval import Interval, interval_of
from authoring.workshop.wrench_fit import WrenchFit, wrench_fit

_ACROSS = 90


def wrenches(step: Step, scope: Scope) -> list[Tool]:
    """Return the tools of a step that state a range of torque, and the adapters beside them."""
    listed = (scope.things[name].thing for name in step.uses if name in scope.things)
    tools = [thing for thing in listed if isinstance(thing, Tool)]
    ranged = [tool for tool in tools if _scale(tool) is not None]
    return [*ranged, *(tool for tool in tools if tool.adapter is not None)] if ranged else []


def fit_of(tool: Tool, group: FastenerGroup) -> WrenchFit | None:
    """Return how a wrench suits the torque of a group; None where one of the two states nothing to judge by."""
    scale = _scale(tool)
    torque = group.torque.value if group.torque is not None else None
    if scale is None or torque is None:
        return None
    step = tool.resolution
    marks = step.nominal if step is not None and step.dimension is Dimension.TORQUE else None
    return wrench_fit(
        interval_of(torque),
        scale,
        marks * step.unit.factor if step is not None and marks is not None else None,
        torque.nominal * torque.unit.factor if torque.nominal is not None else None,
    )


def at_right_angle(tool: Tool) -> bool:
    """Tell whether a tool is an adapter that sits across the wrench, so that the mark is the torque itself."""
    adapter = tool.adapter
    angle = adapter.angle if adapter is not None else None
    return angle is not None and angle.nominal is not None and angle.nominal * angle.unit.factor == _ACROSS


def _scale(tool: Tool) -> Interval | None:
    reach = tool.range.value if tool.range is not None else None
    return interval_of(reach) if reach is not None and reach.dimension is Dimension.TORQUE else None
