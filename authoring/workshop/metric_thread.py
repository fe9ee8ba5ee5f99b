"""Which metric thread does a text name? M10 is M10 x 1.5, and 1/2-13 UNC is none.

Table: the coarse pitch of each diameter, and all pitches of the general plan.

Symbols:
    diameter, pitch: in mm, exact

Source: ISO 261:1998, general purpose metric screw threads, general plan, as restated in two thread tables that agree;
the pitches of sizes that those tables leave out (M1.1, M4.5, M9, M11 and their like) are from memory.

Assumptions: a text without a pitch means the coarse pitch of its diameter (ISO 261, ISO 965-1).

Limits: diameters from 1 to 300 mm; no multi-start, MJ or inch threads.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType

from msgspec import Struct


class MetricThread(Struct, frozen=True):
    """A metric thread: nominal diameter and pitch in mm, exact, and whether it is left-handed."""

    diameter_mm: Fraction
    pitch_mm: Fraction
    left_hand: bool = False

    @property
    def coarse(self) -> bool:
        """Whether the pitch is the coarse one of this diameter."""
        return COARSE_PITCHES_MM.get(self.diameter_mm) == self.pitch_mm


_COARSE: Mapping[str, str] = {
    "0.25": "1 1.1 1.2",
    "0.3": "1.4",
    "0.35": "1.6 1.8",
    "0.4": "2",
    "0.45": "2.2 2.5",
    "0.5": "3",
    "0.6": "3.5",
    "0.7": "4",
    "0.75": "4.5",
    "0.8": "5",
    "1": "6 7",
    "1.25": "8 9",
    "1.5": "10 11",
    "1.75": "12",
    "2": "14 16",
    "2.5": "18 20 22",
    "3": "24 27",
    "3.5": "30 33",
    "4": "36 39",
    "4.5": "42 45",
    "5": "48 52",
    "5.5": "56 60",
    "6": "64 68",
}

COARSE_PITCHES_MM: Mapping[Fraction, Fraction] = MappingProxyType(
    {Fraction(diameter): Fraction(pitch) for pitch, diameters in _COARSE.items() for diameter in diameters.split()}
)
"""The coarse pitch of each diameter that has one, both in mm (ISO 261)."""

_PITCHES_MM = frozenset(COARSE_PITCHES_MM.values()) | {Fraction(1, 5), Fraction(8)}
_COARSEST_MM = Fraction(8)  # above M68 there is no coarse series; 8 mm is the largest pitch of the plan
_LARGEST_COARSE_MM = max(COARSE_PITCHES_MM)
_LARGEST_MM = 300

_NUMBER = r"[0-9]{1,3}(?>(?:\.[0-9]{1,3})?)"
_CLASS = r"(?>(?:[3-9][A-Ha-h]){1,2})"
_THREAD = re.compile(
    rf"\s*+M\s?(?P<diameter>{_NUMBER})(?>(?:\s*+[x×]\s*+(?P<pitch>{_NUMBER}))?)"
    rf"(?>(?:\s*+-\s*+{_CLASS}(?>(?:/{_CLASS})?))?)(?>(?P<left>\s*+-?\s*+LH)?)\s*+"
)


@lru_cache(maxsize=1024)  # many rules ask for the threads of the same few bolts
def metric_thread(text: str) -> MetricThread | None:
    """Return the thread that a text names, such as "M10", "M10 x 1.25" or "M10x1.5-6g-LH"; None when it names none.

    A tolerance class behind the pitch is read and left aside, since it changes no figure here.
    None also for a pitch that is not in the plan of ISO 261 or is coarser than the coarse one (the largest of its
    diameter), for a diameter without a coarse pitch that states none, and for multi-start and MJ threads.
    A small m, a decimal comma and a length behind the thread are not read: the text might mean something else.
    """
    match = _THREAD.fullmatch(text)
    if match is None:
        return None
    diameter = Fraction(match["diameter"])
    coarse = COARSE_PITCHES_MM.get(diameter)
    pitch = Fraction(match["pitch"]) if match["pitch"] else coarse
    if pitch is None or pitch not in _PITCHES_MM or not 1 <= diameter <= _LARGEST_MM:
        return None
    if pitch > (coarse or _coarsest(diameter)):
        return None
    return MetricThread(diameter, pitch, match["left"] is not None)


def _coarsest(diameter: Fraction) -> Fraction:
    """Return the pitch that no thread of a diameter outside the coarse series exceeds: that of the next smaller one."""
    if diameter > _LARGEST_COARSE_MM:
        return _COARSEST_MM
    return max(pitch for size, pitch in COARSE_PITCHES_MM.items() if size <= diameter)
