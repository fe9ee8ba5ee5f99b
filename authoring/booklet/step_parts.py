"""What a step is made of: its safety messages, torques, checkpoints, choices, figures and advice."""

from __future__ import annotations

from typing import TypeAlias

from msgspec import Struct

from authoring.booklet.words import Blank, Bullets, Passage, Text


class Caution(Struct, frozen=True):
    """A caution block: the signal word, what threatens, what it does, how to stay clear of it.

    `harm` is person, equipment or environment; `sign` names a drawing of ours.
    """

    id: str
    word: str
    harm: str
    sign: str
    hazard: Text
    consequence: Text
    avoidance: Text
    applies: str = ""


class LimitRow(Struct, frozen=True):
    """One unit's line of a callout: numbers as text, None where the source states none."""

    unit: str
    low: str | None
    nominal: str | None
    high: str | None


class TorqueCallout(Struct, frozen=True):
    """A torque as the reader sees it: which fasteners, how many, how tight in both units, where it comes from."""

    fasteners: str
    count: int
    thread: str
    rows: tuple[LimitRow, ...]
    source: str
    note: str = ""
    applies: str = ""


class Outcome(Struct, frozen=True):
    """One thing a checkpoint may show, and what follows; `good` when the job simply goes on."""

    found: Text
    follows: Text
    good: bool


class Checkpoint(Struct, frozen=True):
    """What is seen, felt, heard, counted or measured, its window if it has one, a blank, and its outcomes."""

    id: str
    way: str
    what: Text
    window: Text
    entry: Blank | None
    outcomes: tuple[Outcome, ...]
    hold: bool = False


class ChoiceRow(Struct, frozen=True):
    """One part that may be the right one: its name and number, for which vehicles or reading, how to tell."""

    part: str
    number: str
    decides: Text
    tell: Text


class Choice(Struct, frozen=True):
    """Which of several parts: the question that decides and a row for each part."""

    id: str
    name: str
    question: Text
    rows: tuple[ChoiceRow, ...]


class Callout(Struct, frozen=True):
    """A number on a figure: what it points at, and where (percent of the figure's width and height)."""

    number: int
    label: str
    across: float
    down: float


class Figure(Struct, frozen=True):
    """A picture with its number, title, alternative text and callouts; `asset` is a key of `Booklet.assets`."""

    id: str
    number: str
    title: str
    alt: str
    asset: str
    width: float
    height: float
    callouts: tuple[Callout, ...]


class Aside(Struct, frozen=True):
    """Advice that is no safety message: a tip or a reason, told by its label."""

    label: str
    passage: Passage


StepPart: TypeAlias = TorqueCallout | Checkpoint | Choice | Figure | Aside | Bullets


class Step(Struct, frozen=True):
    """One instruction: its caution blocks come first, then the words, then what belongs to them."""

    id: str
    number: str
    applies: str
    cautions: tuple[Caution, ...]
    text: Text
    parts: tuple[StepPart, ...]
