"""What an action changes, and where the hands must be for it: declared by each action, read by every walk.

A side is what may change about a thing: where it is, whether its lid is open, how high it is, what
holds it, what keeps it from moving, whether it is fed, moves, is full or free of air, and in which position it stands.
"""

from __future__ import annotations

import enum

from msgspec import Struct


class Effect(Struct, frozen=True):
    """One change: the side of the thing in role `of` becomes `becomes`, or the word that stands in the detail `says`.

    With `only` it happens only to what is in one of these states; where one action has several such changes of one
    thing, that of the side which changed last happens.
    `perhaps` says that it may have been so before: whoever lowers a lid need not have held it up.
    It does not happen where the action names something in the role `unless`: whoever draws out a stated amount leaves
    the rest in.
    """

    side: str
    becomes: str = ""
    of: str = "what"
    says: str = ""
    only: frozenset[str] = frozenset()
    perhaps: bool = False
    unless: str = ""


class Reach(enum.Enum):
    """Where the hands must be: at the thing's place on the machine, at the thing wherever it lies, or nowhere near."""

    PLACE = "at its place"
    THING = "at the thing"
    NOWHERE = "nowhere near"


HELD_UP = frozenset({"supported", "chocked"})
"""How a thing is held until something else carries it or it is let down."""

CARRIED = Effect("hold", "carried", only=HELD_UP)
"""What it is fitted to carries it now; a stand may be under it still."""
