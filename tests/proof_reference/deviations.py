"""The libraries on which checker and reference differ today, each with the reason; one that agrees is taken out."""

from __future__ import annotations

from collections.abc import Mapping

_BENCH = "The checker asks for the cover over a part although the whole that it is part of is off the machine."

OPEN: Mapping[tuple[int, str], str] = {
    (1086, "reached-through-cover"): _BENCH,
}
"""By seed and rule: why the two differ."""
