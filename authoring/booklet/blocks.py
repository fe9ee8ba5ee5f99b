"""What the reader meets, in order: the blocks between the model and every output.

A block holds finished words: references are resolved, quantities converted, signal words derived.
An output sets blocks and decides nothing, so two outputs cannot disagree, and a booklet can be tested as text.
"""

from __future__ import annotations

from typing import TypeAlias

from msgspec import Struct

from authoring.booklet.step_parts import Aside, Caution, Choice, Drawing, Figure, Noticed, Step
from authoring.booklet.words import Bullets, Paragraph, Passage, Text


class Cell(Struct, frozen=True):
    """One cell of a table; `tick` draws a box to tick instead of words."""

    text: Text = ()
    tick: bool = False


class Table(Struct, frozen=True):
    """Rows under heads; the first cell of a row is its head. `empty` is printed when there is no row.

    `widths` are shares of the line, one a column; `numeric` names the columns set in lining figures, right-aligned.
    """

    id: str
    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    widths: tuple[int, ...]
    empty: str = "None."
    numeric: tuple[int, ...] = ()
    note: str = ""


class Facts(Struct, frozen=True):
    """Pairs of a label and what it says, set as a short list of definitions."""

    rows: tuple[tuple[str, Text], ...]


class FirstSteps(Struct, frozen=True):
    """What to do first when something has happened: for each case its name and the moves, in order."""

    rows: tuple[tuple[str, tuple[Text, ...]], ...]


class FormLine(Struct, frozen=True):
    """One line of a form: its label, what is printed behind it, and how many lines there are to write on."""

    label: str
    printed: Text = ()
    lines: int = 0


class Form(Struct, frozen=True):
    """Something to fill in; `cut` prints the line along which it is torn off."""

    id: str
    title: str
    rows: tuple[FormLine, ...]
    note: str = ""
    cut: bool = False


class Methods(Struct, frozen=True):
    """The line above several methods of which one is done: the numbers of their steps, and why there are several."""

    numbers: tuple[str, ...]
    why: Passage


class Rest(Struct, frozen=True):
    """The line that says that it is safe to stop here, and how the machine is left."""

    left: Text


class Banner(Struct, frozen=True):
    """One loud line over the full width, with a sentence of explanation."""

    title: str
    passage: Passage


class SignalWords(Struct, frozen=True):
    """The signal words this booklet uses and what each means: (word, harm, meaning)."""

    rows: tuple[tuple[str, str, str], ...]


class End(Struct, frozen=True):
    """The line after which nothing belongs to the procedure any more."""

    text: str


Block: TypeAlias = (
    Paragraph
    | Bullets
    | Caution
    | Step
    | Methods
    | Noticed
    | Rest
    | Table
    | Facts
    | FirstSteps
    | Form
    | Banner
    | SignalWords
    | Figure
    | Drawing
    | Choice
    | Aside
    | End
)


class Chapter(Struct, frozen=True):
    """A headed run of blocks.

    `level` is 1 or 2; `new_page` starts it on a fresh sheet in print; `phase` is the
    part of the job, `time` how long it takes.
    """

    id: str
    number: str
    title: str
    level: int
    blocks: tuple[Block, ...]
    applies: str = ""
    new_page: bool = False
    phase: str = ""
    time: Text = ()


class Cover(Struct, frozen=True):
    """The first page: which job, on what, for whom, in which revision, and how far it can be trusted."""

    job: Passage
    facts: Facts
    fitments: Table
    banner: Banner | None
    deference: Passage
    options: Table | None = None


class Asset(Struct, frozen=True):
    """A picture's bytes and kind."""

    mime: str
    content: bytes


class Booklet(Struct, frozen=True):
    """A whole booklet for one procedure and one choice of fitments.

    `fitment` is the line printed on every page, such as "All fitments" or "Only parking brake: disc brake".
    `date` is the revision's, ISO 8601; `trial` is "" or "NOT VALIDATED".
    """

    number: str
    title: str
    shop: str
    equipment: str
    revision: str
    date: str
    fitment: str
    trial: str
    cover: Cover
    chapters: tuple[Chapter, ...]
    assets: dict[str, Asset]
