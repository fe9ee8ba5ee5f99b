"""The steps of a booklet in the order in which they are done, those of other procedures where they are carried out."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.booklet.plan import Placed, Plan, Volume
from authoring.model.specification import When


class Done(Struct, frozen=True):
    """A step at its turn: its place and procedure, and the conditions under all of which it is done."""

    placed: Placed
    volume: Volume
    whens: tuple[When, ...]


def in_order(plan: Plan) -> tuple[Done, ...]:
    """Return every step at its turn; a procedure that is carried out twice is there twice.

    What only an outcome leads into is left out, since it is not on the way of a job that goes as it should.
    """
    return tuple(_of(plan.main, plan, (), ()))


def _of(volume: Volume, plan: Plan, whens: tuple[When, ...], around: tuple[str, ...]) -> Iterator[Done]:
    for placed in volume.steps():
        mine = (*whens, placed.when) if placed.when else whens
        yield Done(placed, volume, mine)
        for action in placed.step.actions:
            for number in action.what if action.kind.name == "carry-out" else ():
                inner = plan.volume_of(number)
                # Procedures that carry one another out are told of as an error; nobody gets to the end of them.
                if inner is not None and inner is not volume and number not in around:
                    yield from _of(inner, plan, mine, (*around, volume.procedure.number))
