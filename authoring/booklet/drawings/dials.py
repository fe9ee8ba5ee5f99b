"""Where a mark stands, on the face of a clock."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.manner import clock
from authoring.booklet.markup import said
from authoring.booklet.phrases import all_the, capital
from authoring.booklet.plan import Volume
from authoring.booklet.shapes import Dial
from authoring.booklet.step_parts import Drawing
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.procedure import Action, Step
from authoring.workshop.clock import angle_at
from authoring.workshop.impossible import Impossible


def dials(step: Step, volume: Volume, wording: Wording) -> Iterator[Drawing]:
    """Yield a dial for each position on the face of a clock that the actions of a step name, each once."""
    seen: set[Drawing] = set()
    for action in step.actions:
        drawing = _dial(action, volume, wording)
        if drawing is not None and drawing not in seen:
            seen.add(drawing)
            yield drawing


def _dial(action: Action, volume: Volume, wording: Wording) -> Drawing | None:
    turned = action.manner.orientation
    angle = angle_at(turned.clock) if turned is not None and turned.clock is not None else None
    if turned is None or turned.clock is None or angle is None or isinstance(angle, Impossible):
        return None
    mark = wording.line(turned.mark) if turned.mark is not None else all_the(action.what, wording)
    title = f"{capital(said(mark))} {clock(turned.clock)}"
    notes = tuple(_seen_from(turned.seen_from, volume, wording))
    told = " ".join(said(note) for note in notes)
    alt = f"Drawing of the face of a clock: {said(mark)} {clock(turned.clock)}. {told}".rstrip()
    return Drawing(title, alt, Dial(float(angle)), notes)


def _seen_from(seen_from: str | None, volume: Volume, wording: Wording) -> Iterator[Text]:
    equipment = volume.scope.equipment
    if seen_from is not None:
        yield (Words("Seen from "), *wording.line(seen_from), Words("."))
    elif equipment is not None and equipment.viewpoint is not None:
        yield (Words(f"{capital(equipment.viewpoint).removesuffix('.')}."),)
