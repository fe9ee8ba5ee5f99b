"""What else is looked at because the machine is open anyway."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import Chapter
from authoring.booklet.plan import Volume
from authoring.booklet.ready import ready
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words

_CLOSING = frozenset({"refit", "test", "close"})
"""The parts of a job in which the machine is closed again."""


def while_open(volume: Volume, wording: Wording) -> tuple[Chapter, ...]:
    """Return the chapter with a box for each thing to look at; none where nothing is named."""
    if not volume.procedure.while_there:
        return ()
    rows = list(_rows(volume, wording))
    mark = f"-{volume.letter.lower()}" if volume.letter else ""
    anchor, title, widths = f"while-open{mark}", "While you are there", (54, 36)
    if any(only for _, only in rows):
        table = ready(f"{anchor}-table", "Look at these as well", ("Look", "Only for"), widths, rows, box="Looked")
    else:
        plain = ((look,) for look, _ in rows)
        table = ready(f"{anchor}-table", "Look at these as well", ("Look",), (90,), plain, box="Looked")
    return (Chapter(anchor, "", title, 2 if volume.letter else 1, (table,)),) if rows else ()


def closing_begins(volume: Volume) -> str:
    """Return the anchor of the section before which the machine is open widest: the first that closes it again.

    Empty where no section says so; then the look comes before the work, so that nobody reads it too late.
    """
    return next((anchor for section, anchor, _ in volume.sections if section.phase in _CLOSING), "")


def _rows(volume: Volume, wording: Wording) -> Iterator[tuple[Text, Text]]:
    for glance in volume.procedure.while_there:
        if volume.holds(glance.when):
            applies = wording.applies(glance.when)
            only: Text = (Words(f"{applies}. "),) if applies else ()
            used = wording.line(glance.only_if) if glance.only_if else ()
            yield wording.line(glance.look), (*only, *used)
