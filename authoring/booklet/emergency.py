"""The page for the moment when something has happened: what to do first, from the shop's register."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import Chapter, FirstSteps
from authoring.booklet.phrases import capital
from authoring.booklet.plan import Plan
from authoring.booklet.words import Paragraph, Text, Words
from authoring.model.things import Hazard

_RESTART = (
    "After a stop, nobody starts the machine or goes on with the job before the workshop lead has agreed. "
    "Where local rules say otherwise, they come first."
)


def emergency(plan: Plan) -> tuple[Chapter, ...]:
    """Return the page, short enough to hang up; none where the shop says nothing about it."""
    shop = plan.library.shop
    rows = [("Whatever has happened", _moves(shop.emergency))] if shop is not None and shop.emergency else []
    # By name, since somebody who needs the page looks for a word.
    rows += [
        (capital(hazard.name), _moves(hazard.emergency)) for hazard in sorted(_met(plan), key=lambda one: one.name)
    ]
    if not rows:
        return ()
    blocks = (FirstSteps(tuple(rows)), Paragraph((Words(_RESTART),)))
    return (Chapter("emergency", "", "If something goes wrong", 1, blocks),)


def _met(plan: Plan) -> Iterator[Hazard]:
    """Yield each kind of hazard of which this booklet has a safety message, once."""
    hazards = plan.library.shop.hazards if plan.library.shop is not None else {}
    names = dict.fromkeys(message.of for volume in plan.volumes for message in volume.messages())
    return (hazards[name] for name in names if name is not None)


def _moves(texts: tuple[str, ...]) -> tuple[Text, ...]:
    return tuple((Words(text),) for text in texts)
