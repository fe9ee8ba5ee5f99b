"""What a step is made of: its safety messages, torques, checkpoints, choices, figures and advice."""

from __future__ import annotations

from typing import TypeAlias

from msgspec import Struct

from authoring.booklet.shapes import Shape
from authoring.booklet.words import Bullets, Passage, Text


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
    """A torque as the reader sees it: which fasteners, how many, how tight in both units, where it comes from.

    `lines` say the rest under labels: what to set, stages, order, threads, what a failure puts at risk, who looks a
    second time.
    `derived` is worked out from it, such as the clamp force, each with what it takes for granted; it is set small.
    `adapted` tells that the wrench is set to another number, so that this one and not the torque is set largest.
    """

    fasteners: str
    count: int
    thread: str
    rows: tuple[LimitRow, ...]
    source: str
    note: str = ""
    applies: str = ""
    lines: tuple[tuple[str, Text], ...] = ()
    derived: tuple[tuple[str, Text], ...] = ()
    adapted: bool = False


class Outcome(Struct, frozen=True):
    """One thing a checkpoint may show, and what follows; `good` when the job simply goes on.

    `more` is what is told beside: by what to do it, how often, what then, and what else it concerns.
    """

    found: Text
    follows: Text
    good: bool
    more: Text = ()
    applies: str = ""


class Checkpoint(Struct, frozen=True):
    """What is seen, felt, heard, counted or measured, its window if it has one, and its outcomes.

    `entries` are the lines to write on, one for each reading; where there are several, each says which it is of.
    `notes` say what it is compared with and for which vehicles it decides; `signed` is the line of who met it.
    """

    id: str
    way: str
    what: Text
    window: Text
    entries: tuple[Text, ...]
    outcomes: tuple[Outcome, ...]
    hold: bool = False
    notes: tuple[Text, ...] = ()
    signed: Text = ()


class Noticed(Struct, frozen=True):
    """What somebody may notice unasked, and what follows."""

    id: str
    outcomes: tuple[Outcome, ...]


class ChoiceRow(Struct, frozen=True):
    """One part that may be the right one: its name and number, for which vehicles or reading, how to tell.

    `tick` draws a box before its name, where several will do and the one that was taken is ticked.
    """

    part: str
    number: str
    decides: Text
    tell: Text
    tick: bool = False


class Choice(Struct, frozen=True):
    """Which of several parts: the question that decides and a row for each part.

    `notes` say what a wrong part does and what decides nothing.
    """

    id: str
    name: str
    question: Text
    rows: tuple[ChoiceRow, ...]
    notes: tuple[Text, ...] = ()


class Callout(Struct, frozen=True):
    """A number on a figure: what it points at, and where (percent of the figure's width and height)."""

    number: int
    label: str
    across: float
    down: float


class Figure(Struct, frozen=True):
    """A picture with its number, title, alternative text and callouts; `asset` is a key of `Booklet.assets`.

    `shows` says whether it looks like that before, during or after the step.
    Without a `legend` the numbers are told by the step alone, as on a picture of grades of wear.
    """

    id: str
    number: str
    title: str
    alt: str
    asset: str
    width: float
    height: float
    callouts: tuple[Callout, ...]
    shows: str = ""
    legend: bool = True


class Drawing(Struct, frozen=True):
    """A drawing made from the data: its title, the same in words, what it shows, and the lines below its title."""

    title: str
    alt: str
    shape: Shape
    notes: tuple[Text, ...] = ()


class Aside(Struct, frozen=True):
    """A few words told by their label: what is needed, the manner, a tip, a reason; never a safety message.

    `close` sets it right below the instruction, which it completes; `rounds` draws a box for each time it is done.
    """

    label: str
    passage: Passage
    close: bool = False
    rounds: int = 0


StepPart: TypeAlias = TorqueCallout | Checkpoint | Noticed | Choice | Figure | Drawing | Aside | Bullets


class Step(Struct, frozen=True):
    """One instruction: what must be so and its caution blocks come first, then the words, then what belongs to them.

    `clock` is the id of the step from which its time runs, where that step stands in the same chapter.
    """

    id: str
    number: str
    applies: str
    cautions: tuple[Caution, ...]
    text: Text
    parts: tuple[StepPart, ...]
    before: tuple[Aside, ...] = ()
    clock: str = ""
