"""How well each computation is confirmed from outside, so that a page can say so beside a value.

A computation bears its module's name; a part of a module that is known differently bears its own after a full stop,
such as `clamp_force.nut_factor`.
`kind_of("cooling")` tells the best that is known of its sources; `unverified("clamp_force")` is true where no source's
own text was read, and then the page prints "unverified" beside the value.
The published values themselves are kept with the tests, and a test holds this table against them, so neither drifts.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

READ = "read"
"""Held against a published value that was read in the source's own text."""
RESTATED = "restated"
"""Held against a second party's copy of the source; the source itself was not read."""
MEMORY = "memory"
"""Held against values that were found in no text."""
COMPUTED = "computed"
"""Held against a second computation from published inputs."""
COMMON = "common practice"
"""Held against what the trade does; nobody published it."""

KINDS: Mapping[str, str] = MappingProxyType(
    {
        "bolt_load": RESTATED,
        "bolt_pattern": READ,
        "burns": READ,
        "burns.harm": MEMORY,
        "clamp_force": RESTATED,
        "clamp_force.nut_factor": RESTATED,
        "clock": COMMON,
        "cooling": READ,
        "cooling.time_constant": READ,
        "expansion": READ,
        "fills.rest": RESTATED,
        "fills.sum": READ,
        "fills.top_up": COMMON,
        "gauges.acceptance": RESTATED,
        "gauges.judge": RESTATED,
        "gauges.on_the_scale": COMPUTED,
        "gauges.simple_acceptance": READ,
        "gauges.spread": READ,
        "gauges.told_apart": COMPUTED,
        "level_windows": COMMON,
        "meant_unit": RESTATED,
        "metric_thread": RESTATED,
        "oil_density": COMPUTED,
        "oil_density.expansion": RESTATED,
        "oil_density.formula": READ,
        "proof_load": RESTATED,
        "proof_load.stress": READ,
        "rounding": READ,
        "rounding.limits": RESTATED,
        "shrink_fit": READ,
        "shrink_fit.coefficients": READ,
        "signal_words": RESTATED,
        "thread_engagement": READ,
        "thread_engagement.loosest": MEMORY,
        "thread_geometry.diameters": READ,
        "thread_geometry.stress_area": READ,
        "tightening_angle.force": READ,
        "tightening_angle.stages": READ,
        "tightening_angle.stiffness": READ,
        "tightening_angle.take_up": RESTATED,
        "tightening_order.circle": RESTATED,
        "tightening_order.opposite": READ,
        "tightening_order.outline": READ,
        "tightening_order.row": READ,
        "unit_writing": READ,
        "units": READ,
        "wrench_fit": READ,
        "wrench_fit.permissible_deviation": RESTATED,
        "wrench_fit.promised_deviation": READ,
        "wrench_setting": READ,
    }
)
"""The best that is known of each computation."""


def kind_of(computation: str) -> str:
    """Return how a computation is known: one of the words above.

    Raises KeyError for a name that is no computation.
    """
    return KINDS[computation]


def unverified(*computations: str) -> bool:
    """Return whether a value that rests on all of these computations must be marked: one of them rests on no text read.

    Raises KeyError for a name that is no computation.
    """
    return any(kind_of(computation) != READ for computation in computations)
