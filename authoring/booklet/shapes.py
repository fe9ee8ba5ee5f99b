"""What a drawing shows, as finished geometry in mm of paper: x to the right, y down, from its upper left corner.

A shape holds where everything lies and which words stand there; an output only puts lines and letters round it.
"""

from __future__ import annotations

from typing import TypeAlias

from msgspec import Struct


class Disc(Struct, frozen=True):
    """A fastener, and as which one it is tightened, from 1."""

    x: float
    y: float
    turn: int


class BoltPattern(Struct, frozen=True):
    """Fasteners as one sees them, each with its turn; `circle` is the radius of the circle they stand on, or 0.

    The middle of the pattern is at (`x`, `y`), and 12 o'clock is above it at the upper edge.
    `outline` is the line round those that stand outermost, where they stand on no circle.
    """

    width: float
    height: float
    x: float
    y: float
    circle: float
    radius: float
    discs: tuple[Disc, ...]
    outline: tuple[tuple[float, float], ...] = ()


class Dial(Struct, frozen=True):
    """The face of a clock with a mark at `degrees` clockwise from 12."""

    degrees: float


class Bar(Struct, frozen=True):
    """A length to scale: at least `low` and at most `high`, the words above it and the dimension beside it."""

    words: str
    low: float
    high: float
    size: str
    right: bool


class ToScale(Struct, frozen=True):
    """Lengths below one another at one scale; `rule` is the length of the scale bar, `reads` what it stands for."""

    bars: tuple[Bar, ...]
    rule: float
    reads: str


class Band(Struct, frozen=True):
    """A window on the scale of temperature: from, to, and the words for it."""

    low: float
    high: float
    words: str


class Lane(Struct, frozen=True):
    """One kind of vehicle: its words, the windows in which the level counts, up to where a part of the circuit is shut.

    From `shut` to `open` the thermostat is opening; both are 0 where there is none.
    """

    words: str
    bands: tuple[Band, ...]
    shut: float = 0
    open: float = 0


class Windows(Struct, frozen=True):
    """Lanes above one scale of temperature; `ticks` are the places of its numbers."""

    width: float
    lanes: tuple[Lane, ...]
    ticks: tuple[tuple[float, str], ...]


class Stint(Struct, frozen=True):
    """A stretch of steps, from and to, in which a thing is as its lane says."""

    start: float
    end: float


class Track(Struct, frozen=True):
    """One thing and how it is, in lines of words, and when; `safe` where that keeps people from harm."""

    words: tuple[str, ...]
    safe: bool
    stints: tuple[Stint, ...]


class Strip(Struct, frozen=True):
    """Tracks above one row of steps, which is `width` wide, with words of up to `words` beside it.

    `sections` are the places where a section begins; `numbers` the places of the numbers of steps that are printed.
    """

    words: float
    width: float
    tracks: tuple[Track, ...]
    sections: tuple[float, ...]
    numbers: tuple[tuple[float, str], ...]


Shape: TypeAlias = BoltPattern | Dial | ToScale | Windows | Strip
