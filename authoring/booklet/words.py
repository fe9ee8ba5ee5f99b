"""Running text of a booklet: words, names of things, amounts, blanks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias


@dataclass(frozen=True, slots=True)
class Words:
    """Plain words; `stress` is "", "strong" or "emphasis"."""

    text: str
    stress: str = ""


@dataclass(frozen=True, slots=True)
class Named:
    """A thing called by its name; `target` is the anchor in this booklet it points to, or empty.

    `turn_to` prints the page of the target beside the name on paper: for a reference the reader has to follow.
    """

    text: str
    target: str = ""
    turn_to: bool = False


@dataclass(frozen=True, slots=True)
class Amount:
    """A quantity in the shop's unit, and the second unit beside it (empty when the shop has none)."""

    first: str
    second: str = ""


@dataclass(frozen=True, slots=True)
class Link:
    """A link out of the booklet."""

    text: str
    address: str


@dataclass(frozen=True, slots=True)
class Blank:
    """A line to write on; `unit` stands behind it."""

    unit: str = ""


Inline: TypeAlias = Words | Named | Amount | Link | Blank
Text: TypeAlias = tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One paragraph."""

    text: Text


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list of short texts."""

    entries: tuple[Text, ...]
    ordered: bool = False


Passage: TypeAlias = tuple[Paragraph | Bullets, ...]
