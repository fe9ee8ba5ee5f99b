"""In which of several temperature windows may a fluid level be read, and why not in the others?

Formula:
    usable = window ∩ circuit open ∩ allowed; it must not be empty

Symbols:
    window: temperatures in K for which the level is stated
    circuit open: temperatures in K from the one at which the thermostat is open for certain
    allowed: temperatures in K that the steps before let the fluid have

Source: common practice; nobody published it.

Assumptions: the level is stated for a full circuit.
Where a thermostat shuts a part of the circuit (a cooler, a second tank) until the fluid is hot, that part may be empty,
and what it will take is missing from the reading: too much stands between the marks.

Limits: on cooling a thermostat shuts later than it opened; what is stated of it must cover that when a level is read
while it cools.
"""

from __future__ import annotations

import enum
from fractions import Fraction

from msgspec import Struct

from authoring.workshop.interval import Interval, Standing, compare


class Reading(enum.Enum):
    """Whether a level reading holds in a window, and if not, why."""

    HOLDS = "holds"
    """At every temperature that the steps allow."""
    HOLDS_IN_PART = "holds in part"
    """At some of them: the temperature must be read beside the level."""
    CIRCUIT_SHUT = "circuit shut"
    """At none: all of the window lies below the temperature at which the circuit is open for certain."""
    TOO_COLD = "too cold"
    """At none: the steps do not let the fluid get so warm."""
    TOO_WARM = "too warm"
    """At none: the steps do not let the fluid get so cold."""


class WindowCheck(Struct, frozen=True):
    """A window, whether a reading holds in it, at which temperatures (None: at none), and how many K are lacking."""

    window: Interval
    reading: Reading
    usable: Interval | None
    lacking: Fraction


def check_window(window: Interval, allowed: Interval, opens: Interval | None = None) -> WindowCheck:
    """Return whether a level may be read in a window: window ∩ circuit open ∩ allowed is not empty.

    `window` is the one stated for the level, `allowed` what the steps before let the fluid have.
    `opens` is where the thermostat opens, from the first to the last; None for a circuit that is always open.
    `lacking` is 0 when the reading holds, else how far the window's usable part (or, with a shut circuit, its upper
    end) is from what is needed.
    Limit: on cooling a thermostat shuts later than it opened; `opens` must cover that when a job reads while it cools.
    """
    open_from = Interval(None if opens is None else opens.high, None)
    circuit = compare(window, open_from)
    if circuit.common is None:
        return WindowCheck(window, Reading.CIRCUIT_SHUT, None, circuit.gap)
    reached = compare(allowed, circuit.common)
    return WindowCheck(window, _READINGS[reached.standing], reached.common, reached.gap)


_READINGS = {
    Standing.WITHIN: Reading.HOLDS,
    Standing.PARTLY: Reading.HOLDS_IN_PART,
    Standing.BELOW: Reading.TOO_COLD,
    Standing.ABOVE: Reading.TOO_WARM,
}
