"""Running text of a booklet: words, names of things, amounts, blanks."""

from __future__ import annotations

from typing import TypeAlias

from msgspec import Struct


class Words(Struct, frozen=True):
    """Plain words; `stress` is "", "strong" or "emphasis"."""

    text: str
    stress: str = ""


class Named(Struct, frozen=True):
    """A thing called by its name; `target` is the anchor in this booklet it points to, or empty.

    `turn_to` prints the page of the target beside the name on paper: for a reference the reader has to follow.
    """

    text: str
    target: str = ""
    turn_to: bool = False


class Amount(Struct, frozen=True):
    """A quantity in the shop's unit, and the second unit beside it (empty when the shop has none)."""

    first: str
    second: str = ""


class Link(Struct, frozen=True):
    """A link out of the booklet."""

    text: str
    address: str


class Blank(Struct, frozen=True):
    """A line to write on; `unit` stands behind it, and `label` is its name where the words around do not tell."""

    unit: str = ""
    label: str = ""


class Pick(Struct, frozen=True):
    """A box to tick and the words of what is then chosen, on a line of their own."""

    text: str


Inline: TypeAlias = Words | Named | Amount | Link | Blank | Pick
Text: TypeAlias = tuple[Inline, ...]


class Paragraph(Struct, frozen=True):
    """One paragraph."""

    text: Text


class Bullets(Struct, frozen=True):
    """A list of short texts."""

    entries: tuple[Text, ...]
    ordered: bool = False


Passage: TypeAlias = tuple[Paragraph | Bullets, ...]
