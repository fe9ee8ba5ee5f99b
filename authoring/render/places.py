"""Names for the places of a page: what the templates mark and the page rules find again.

A tilde parts a derived name from the id it comes from, so it never meets an id of the booklet itself.
"""

from __future__ import annotations

from msgspec import Struct

from authoring.booklet.blocks import Block, Chapter
from authoring.booklet.shapes import BoltPattern, Dial, ToScale
from authoring.booklet.step_parts import (
    Aside,
    Checkpoint,
    Choice,
    Drawing,
    Figure,
    Noticed,
    Step,
    StepPart,
    TorqueCallout,
)

CONTENTS = "contents~whole"
"""The id of the contents."""


def block_place(chapter: Chapter, block: Block, index: int) -> str:
    """Return the id a block is marked with: its own, or one made of the chapter's id and its index from 1."""
    own = getattr(block, "id", "")
    return str(own) if own else f"{chapter.id}~{index}"


def heading_place(chapter: Chapter) -> str:
    """Return the id of a chapter's heading."""
    return f"{chapter.id}~heading"


def text_place(step: Step) -> str:
    """Return the id of a step's instruction."""
    return f"{step.id}~text"


def before_place(step: Step) -> str:
    """Return the id of what must be so before a step."""
    return f"{step.id}~before"


def need_place(step: Step, index: int) -> str:
    """Return the id of one of the lines before a step, counted from 1."""
    return f"{step.id}~before{index}"


def picture_place(figure: Figure) -> str:
    """Return the id of a figure's picture."""
    return f"{figure.id}~picture"


def caption_place(figure: Figure) -> str:
    """Return the id of a figure's caption."""
    return f"{figure.id}~caption"


class PlacedPart(Struct, frozen=True):
    """A part of a step in the order it is set.

    `kept` when it must stay with the instruction on one page, `glued` when such a part comes after it.
    """

    place: str
    part: StepPart
    kept: bool
    glued: bool


def _is_kept(part: StepPart) -> bool:
    """Y1: a torque, a drawing of it, and a checkpoint with a line to write on, are needed at the instruction.

    Look-alikes to scale stay with the table that tells them apart, which may stand on the next page.
    """
    drawn = isinstance(part, Drawing) and not isinstance(part.shape, ToScale)
    return drawn or isinstance(part, TorqueCallout) or (isinstance(part, Checkpoint) and bool(part.entries))


_RANKS: dict[type, int] = {
    Dial: 1,
    TorqueCallout: 2,
    BoltPattern: 2,
    Checkpoint: 3,
    Aside: 5,
    Noticed: 6,
    Figure: 7,
}
_CLOSE, _REST = 0, 4


def _rank(part: StepPart) -> int:
    """Return where in a step a part stands: a dial ends the words of the instruction, a pattern follows its torque."""
    if isinstance(part, Aside) and part.close:
        return _CLOSE
    return _RANKS.get(type(part.shape if isinstance(part, Drawing) else part), _REST)


def placed_parts(step: Step) -> tuple[PlacedPart, ...]:
    """Order a step's parts for reading: what completes the words, then torques and checkpoints; figures come last.

    A step with a tall figure may need two pages. With the figures last, what is tightened, written down
    and signed stays on the page of the instruction all the same.
    """
    ordered = sorted(step.parts, key=_rank)
    last = max((at for at, part in enumerate(ordered) if _is_kept(part)), default=-1)
    return tuple(
        PlacedPart(
            place=part.id if isinstance(part, Figure | Checkpoint | Choice | Noticed) else f"{step.id}~part{at + 1}",
            part=part,
            kept=at <= last,
            glued=at < last,
        )
        for at, part in enumerate(ordered)
    )
