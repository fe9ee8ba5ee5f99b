"""Which tools of a step are wrenches that show a torque, with which adapter, and how each suits a fastener group."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from authoring.model.gauging import most_off
from authoring.model.library import Scope
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Procedure, Step
from authoring.model.things import Adapter, FastenerGroup, Stock, Tool
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, interval_of, least_of, middle_of, widened
from authoring.workshop.wrench_fit import WrenchFit, permissible_deviation, wrench_fit
from authoring.workshop.wrench_setting import LENGTH_UNKNOWN, at_the_wrench, lever_ratio


class Held(Struct, frozen=True, eq=False):
    """A torque wrench as it is held: alone or with an adapter.

    `ratio` is what is set over what reaches the fastener; Impossible where it cannot be worked out.
    """

    wrench: Tool
    adapter: Tool | None
    ratio: Fraction | Impossible


class Tightening(Struct, frozen=True, eq=False):
    """One group with a torque that a step tightens, where it is named, and the wrenches as they are held there."""

    step: Step
    group: FastenerGroup
    mention: Mention
    held: tuple[Held, ...]


@lru_cache(maxsize=64)
def tightenings(procedure: Procedure, scope: Scope) -> tuple[Tightening, ...]:
    """Return every group with a torque that a procedure's own steps tighten, step by step."""
    return tuple(_tightenings(procedure, scope))


def _tightenings(procedure: Procedure, scope: Scope) -> Iterator[Tightening]:
    for _, step in procedure.steps():
        for action in step.actions:
            for mention in touched(action) if action.kind.torque else ():
                named = scope.things.get(mention.name)
                group = named.thing if named is not None and mention.role == "what" else None
                if isinstance(group, FastenerGroup) and torque_of(group) is not None:
                    yield Tightening(step, group, mention, held(step, scope))


def torque_of(group: FastenerGroup) -> Quantity | None:
    """Return the torque that a group states, where it could be read and is one."""
    torque = group.torque.value if group.torque is not None else None
    return torque if torque is not None and torque.dimension is Dimension.TORQUE else None


def held(step: Step, scope: Scope) -> tuple[Held, ...]:
    """Return the torque wrenches of a step, each with each adapter that the step lists; alone where it lists none."""
    listed = (scope.things[name].thing for name in step.uses if name in scope.things)
    tools = [thing for thing in listed if isinstance(thing, Tool)]
    return with_adapters([tool for tool in tools if scale_of(tool) is not None], adapters_of(tools))


def with_adapters(wrenches: Iterable[Tool], adapters: Iterable[Tool]) -> tuple[Held, ...]:
    """Return each wrench with each adapter, and alone where there is none."""
    ends: list[Tool | None] = [*adapters]
    return tuple(Held(tool, end, _ratio(tool, end)) for tool in wrenches for end in ends or [None])


def adapters_of(tools: Iterable[Tool]) -> list[Tool]:
    """Return those among tools that move the fastener away from the square of the wrench."""
    return [tool for tool in tools if tool.adapter is not None]


def wrenches_of(stock: Stock | None) -> list[Tool]:
    """Return the shop's torque wrenches: the tools that state a range of torque."""
    return [tool for tool in stock.tools.values() if scale_of(tool) is not None] if stock is not None else []


def scale_of(tool: Tool) -> Interval | None:
    """Return the range of a torque wrench in N·m; None for a tool that states none."""
    reach = tool.range.value if tool.range is not None else None
    return interval_of(reach) if reach is not None and reach.dimension is Dimension.TORQUE else None


def fit_of(one: Held, torque: Quantity) -> WrenchFit | None:
    """Return how a wrench as it is held suits a torque; None where there is nothing to judge by.

    The limits are judged at the wrench, behind the adapter.
    """
    scale = scale_of(one.wrench)
    if scale is None or isinstance(one.ratio, Impossible):
        return None
    step = one.wrench.resolution
    marks = step.nominal if step is not None and step.dimension is Dimension.TORQUE else None
    return wrench_fit(
        at_the_wrench(interval_of(torque), one.ratio),
        scale,
        marks * step.unit.factor if step is not None and marks is not None else None,
        torque.nominal * torque.unit.factor * one.ratio if torque.nominal is not None else None,
    )


def fitting(one: Tightening, stock: Stock | None) -> list[Tool]:
    """Return the shop's torque wrenches that can do a tightening, with the adapters of its step."""
    torque = torque_of(one.group)
    adapters = [held.adapter for held in one.held if held.adapter is not None]
    able = []
    for held in with_adapters(wrenches_of(stock), adapters_of(adapters)):
        fit = fit_of(held, torque) if torque is not None else None
        if fit is not None and fit.fits and held.wrench not in able:
            able.append(held.wrench)
    return able


def overlong(one: Held) -> bool:
    """Tell whether the adapter is longer than the wrench that carries it, where its length counts.

    No adapter is: one of the two lengths was read wrong.
    """
    if one.adapter is None or one.adapter.adapter is None or isinstance(one.ratio, Impossible) or one.ratio == 1:
        return False
    reach, length = _metre(one.adapter.adapter.length), _metre(one.wrench.length)
    return reach is not None and length is not None and reach > length


def off_by(one: Held, torque: Interval) -> Interval:
    """Return the torques in N·m that may reach the fastener where these are meant: each end moved out by the error.

    The error is what the tool states, as a share or an amount; else what ISO 6789 permits a wrench of its full scale.
    """
    tool = one.wrench
    stated = tool.accuracy.value if tool.accuracy is not None else None
    most = most_off(stated)
    if stated is not None and most is not None and stated.dimension is Dimension.TORQUE:
        ratio = Fraction(1) if isinstance(one.ratio, Impossible) else one.ratio
        return widened(torque, most * stated.unit.factor / ratio) or torque
    share = share_off(tool)
    return Interval(
        None if torque.low is None else torque.low * (1 - share),
        None if torque.high is None else torque.high * (1 + share),
    )


def share_off(tool: Tool) -> Fraction:
    """Return the share of its reading by which a wrench may be off: stated, or permitted by ISO 6789."""
    stated = tool.accuracy.value if tool.accuracy is not None else None
    most = most_off(stated)
    if stated is not None and most is not None and stated.dimension is Dimension.RATIO:
        return most * stated.unit.factor
    scale = scale_of(tool)
    return permissible_deviation(scale.high if scale is not None and scale.high is not None else Fraction(100))


def angle_of(adapter: Adapter) -> Fraction | None:
    """Return the angle of an adapter in degrees, 0 where none is stated; None where what is stated is no one angle."""
    if adapter.angle is None:
        return Fraction(0)
    return _single(adapter.angle, _ANGLE_SPREAD)


def _ratio(wrench: Tool, tool: Tool | None) -> Fraction | Impossible:
    adapter = tool.adapter if tool is not None else None
    if adapter is None or adapter.length is None:  # a length that was refused is told of already
        return Fraction(1)
    reach, degree = _metre(adapter.length), angle_of(adapter)
    if degree is not None and adapter.angle is not None and least_of(adapter.angle) == degree:
        square = lever_ratio(None, Fraction(1), degree)
        if square == 1:  # at a right angle no length counts
            return square
    if reach is None or degree is None:
        return _NO_ONE_ADAPTER
    ratio = lever_ratio(_metre(wrench.length), reach, degree)
    return _NO_ONE_WRENCH if ratio is LENGTH_UNKNOWN and wrench.length is not None else ratio


def _metre(length: Quantity | None) -> Fraction | None:
    """Return a length in m; None where nothing is stated, or a span that would shift the setting noticeably."""
    if length is None:
        return None
    return _single(length, None)


def _single(quantity: Quantity, spread: Fraction | None) -> Fraction | None:
    """Return the middle of what is stated, in its base unit, where it is near enough to one number; None elsewhere.

    `spread` is the most that both ends may be apart; a hundredth of the middle where it is None.
    """
    least, middle = least_of(quantity), middle_of(quantity)
    if least is None or middle is None:
        return None
    return middle if middle - least <= (abs(middle) / _HUNDRED if spread is None else spread) else None


_HUNDRED = 100
_ANGLE_SPREAD = Fraction(1)  # degree up and down; the cosine then moves by less than two hundredths
_NO_ONE_ADAPTER = Impossible(
    "The length and the angle of the adapter are stated as spans, and the setting depends on them.",
    "Measure the adapter, and state one length and one angle.",
)
_NO_ONE_WRENCH = Impossible(
    "The length of the wrench is stated as a span, and the setting depends on it.",
    "Measure the wrench from the middle of its square to the middle of its grip, and state one length.",
)
