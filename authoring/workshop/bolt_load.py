"""Can a stated torque stretch its bolt for good, over the range of friction and the error of the tool?

Formula:
    F_least = F(T_low (1 - e), mu_high)
    F_greatest = F(T_high (1 + e), mu_low)
    overloaded if F_greatest > F_p

Symbols:
    T_low, T_high: limits of the torque in N·m; an open end counts as the other one
    mu_low, mu_high: least and greatest friction, in the thread and under the head alike
    e: the tool's error as a share, such as 0.04
    F: clamp force in N by the full formula of `clamp_force`, or by the short one where a nut factor is known
    F_p: proof load in N by `proof_load`

Source: the formulas of `clamp_force` and `proof_load`; permissible deviations in `wrench_fit`.

Assumptions: what is worst on one side comes together: a tool that shows too little, the upper limit and the least
friction.

Limits: tension alone is held against the proof load; the torsion of tightening adds to it until it relaxes, so VDI 2230
stays at 90 % of the yield stress for both together.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from authoring.workshop.clamp_force import force_for_friction, force_for_nut_factor
from authoring.workshop.interval import Interval
from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.proof_load import proof_load_newton


class BoltLoad(Struct, frozen=True):
    """The clamp force in N at worst on either side, and the proof load of the bolt."""

    least_newton: float
    greatest_newton: float
    proof_newton: float

    @property
    def least_share(self) -> float:
        """The least clamp force as a share of the proof load."""
        return self.least_newton / self.proof_newton

    @property
    def greatest_share(self) -> float:
        """The greatest clamp force as a share of the proof load."""
        return self.greatest_newton / self.proof_newton

    @property
    def overloaded(self) -> bool:
        """Whether the greatest clamp force is beyond the proof load, so that the bolt may stay stretched."""
        return self.greatest_newton > self.proof_newton


def bolt_load(
    torque_newton_metre: Interval,
    thread: MetricThread,
    property_class: str,
    friction: Interval,
    tool_error: float = 0.0,
) -> BoltLoad | None:
    """Return the clamp force that a torque may give, and what the bolt bears.

    `friction` is the coefficient in the thread and under the head alike; `tool_error` is a share, such as 0.04.
    An open end of the torque counts as its other end; a torque without any end is not judged, and neither is a friction
    that is open on one side, since the end that nobody states decides.
    None when it is not judged or the class has no proof load at this size.
    """
    return _load(torque_newton_metre, friction, _Bolt(thread, property_class, tool_error), _by_friction)


def bolt_load_for_nut_factor(
    torque_newton_metre: Interval,
    thread: MetricThread,
    property_class: str,
    nut_factor: Interval,
    tool_error: float = 0.0,
) -> BoltLoad | None:
    """Return the same by T = K F d; `nut_factor` is K, which carries a source of its own."""
    return _load(torque_newton_metre, nut_factor, _Bolt(thread, property_class, tool_error), force_for_nut_factor)


class _Bolt(Struct, frozen=True):
    thread: MetricThread
    property_class: str
    tool_error: float


def _load(
    torque: Interval, resistance: Interval, bolt: _Bolt, force: Callable[[float, MetricThread, float], float]
) -> BoltLoad | None:
    """Return the load by a formula that takes the torque, the thread, and what resists the turning."""
    proof = proof_load_newton(bolt.thread, bolt.property_class)
    torques, slippery, rough = _ends(torque), resistance.low, resistance.high
    if proof is None or torques is None or slippery is None or rough is None or slippery <= 0:
        return None
    low, high = torques
    return BoltLoad(
        force(low * (1 - bolt.tool_error), bolt.thread, float(rough)),
        force(high * (1 + bolt.tool_error), bolt.thread, float(slippery)),
        proof,
    )


def _by_friction(torque_newton_metre: float, thread: MetricThread, friction: float) -> float:
    return force_for_friction(torque_newton_metre, thread, friction, friction)


def _ends(interval: Interval) -> tuple[float, float] | None:
    known = [float(end) for end in (interval.low, interval.high) if end is not None]
    return (known[0], known[-1]) if known else None
